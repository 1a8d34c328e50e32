import type { ComponentChildren } from 'preact';
import { useId, useLayoutEffect, useRef } from 'preact/hooks';

/** A window over the page: the browser keeps the focus inside and gives it back at the end. */
export const Dialog = (props: {
  readonly title: string;
  readonly close: () => void;
  readonly children: ComponentChildren;
  readonly isNarrow?: boolean;
}) => {
  const element = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useLayoutEffect(() => {
    const dialog = element.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={element}
      class={props.isNarrow === true ? 'dialog narrow' : 'dialog'}
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        props.close();
      }}
    >
      <div class="dialog-head">
        <h2 id={titleId}>{props.title}</h2>
        <button type="button" class="quiet" onClick={props.close} aria-label={`Close ${props.title}`}>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d="M3.5 3.5l9 9M12.5 3.5l-9 9" />
          </svg>
        </button>
      </div>
      {props.children}
    </dialog>
  );
};
