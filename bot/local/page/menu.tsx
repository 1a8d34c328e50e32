import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';

export type MenuItem = { readonly label: string; readonly choose: () => void };

/** A button that opens a short list of actions: arrows move, Enter chooses, Escape closes. */
export const Menu = ({ label, items }: { readonly label: string; readonly items: readonly MenuItem[] }) => {
  const [isOpen, setOpen] = useState(false);
  const root = useRef<HTMLDivElement>(null);
  const list = useRef<HTMLDivElement>(null);
  const id = useId();

  const entries = () => [...(list.current?.querySelectorAll<HTMLButtonElement>('[role=menuitem]') ?? [])];
  const closeAndReturn = () => {
    setOpen(false);
    root.current?.querySelector<HTMLButtonElement>('.menu-button')?.focus();
  };

  useLayoutEffect(() => {
    if (!isOpen) return undefined;
    const right = list.current?.getBoundingClientRect().right ?? 0;
    list.current?.classList.toggle('to-the-left', right > document.documentElement.clientWidth);
    entries()[0]?.focus();
    const away = (event: PointerEvent) => {
      if (event.target instanceof Node && root.current?.contains(event.target) !== true) setOpen(false);
    };
    document.addEventListener('pointerdown', away);
    return () => document.removeEventListener('pointerdown', away);
  }, [isOpen]);

  const onKeyDown = (event: KeyboardEvent) => {
    const all = entries();
    const at = all.findIndex((entry) => entry.matches(':focus'));
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step !== 0) {
      event.preventDefault();
      all[(at + step + all.length) % all.length]?.focus();
    }
    if (event.key === 'Escape') {
      event.stopPropagation();
      closeAndReturn();
    }
    if (event.key === 'Tab') setOpen(false);
  };

  return (
    <div class="menu" ref={root}>
      <button
        type="button"
        class="menu-button"
        aria-label={label}
        aria-haspopup="menu"
        aria-expanded={isOpen}
        aria-controls={id}
        onClick={() => setOpen(!isOpen)}
      >
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <circle cx="3" cy="8" r="1.5" />
          <circle cx="8" cy="8" r="1.5" />
          <circle cx="13" cy="8" r="1.5" />
        </svg>
      </button>
      <div
        class="menu-list"
        id={id}
        role="menu"
        aria-label={label}
        hidden={!isOpen}
        ref={list}
        onKeyDown={onKeyDown}
      >
        {items.map((item) => (
          <button
            key={item.label}
            type="button"
            role="menuitem"
            tabIndex={-1}
            onClick={() => {
              closeAndReturn();
              item.choose();
            }}
          >
            {item.label}
          </button>
        ))}
      </div>
    </div>
  );
};
