import { useEffect, useId, useRef, useState } from 'preact/hooks';
import type { LocalCommand } from '../local-app.ts';

/** Where Enter starts a new line: on phones, whose keyboards have no Shift + Enter. */
const isTouch = () => matchMedia('(pointer: coarse)').matches;

type Props = {
  readonly label: string;
  readonly commands: readonly LocalCommand[];
  /** False where the text did not go out, so that it comes back to the field. */
  readonly send: (text: string) => Promise<boolean>;
  readonly initial?: string;
  /** What is written but not sent is kept under this name while one looks elsewhere. */
  readonly draftKey?: string;
  readonly sendLabel?: string;
  readonly cancel?: () => void;
};

/** A field of any number of lines: a whole class fits in it, pasted or typed. */
export const Composer = (props: Props) => {
  const { draftKey } = props;
  const [text, setShownText] = useState(
    props.initial ?? (draftKey === undefined ? '' : (sessionStorage.getItem(draftKey) ?? '')),
  );
  /** Messages go out in the order they were written; one may be typed while the one before is on its way. */
  const last = useRef<Promise<unknown>>(Promise.resolve());
  const field = useRef<HTMLTextAreaElement>(null);
  const hintId = useId();

  useEffect(() => {
    const area = field.current;
    if (area === null) return;
    area.style.height = 'auto';
    area.style.height = `${Math.min(area.scrollHeight + 2, 320)}px`;
  }, [text]);

  const setText = (next: string | ((typed: string) => string)) =>
    setShownText((typed) => {
      const shown = typeof next === 'string' ? next : next(typed);
      if (draftKey !== undefined) sessionStorage.setItem(draftKey, shown);
      return shown;
    });

  const send = async () => {
    if (text.trim() === '') return;
    setText('');
    field.current?.focus();
    const sent = last.current.then(() => props.send(text));
    last.current = sent;
    if (!(await sent)) setText((typed) => (typed === '' ? text : `${text}\n${typed}`));
  };

  const suggestions = /^\/\S*$/.test(text)
    ? props.commands.filter(({ command }) => command.startsWith(text) && command !== text)
    : [];

  return (
    <form
      class="composer"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      {suggestions.length > 0 && (
        <ul class="suggestions" aria-label="Commands">
          {suggestions.map(({ command, description, usageHint }) => (
            <li key={command}>
              <button
                type="button"
                onClick={() => {
                  setText(command);
                  field.current?.focus();
                }}
              >
                <strong>{command}</strong> <span class="soft">{usageHint}</span>
                <span class="line">{description}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <div class="composer-row">
        <textarea
          ref={field}
          rows={1}
          aria-label={props.label}
          aria-describedby={hintId}
          placeholder={props.label}
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === 'Escape' && props.cancel !== undefined) {
              event.preventDefault();
              props.cancel();
            }
            if (event.key !== 'Enter' || event.shiftKey || event.isComposing || isTouch()) return;
            event.preventDefault();
            void send();
          }}
        />
        {props.cancel !== undefined && (
          <button type="button" class="button" onClick={props.cancel}>
            Cancel
          </button>
        )}
        <button type="submit" class="button primary" disabled={text.trim() === ''}>
          {props.sendLabel ?? 'Send'}
        </button>
      </div>
      <p class="composer-hint" id={hintId}>
        Enter sends, Shift + Enter starts a new line.
        {props.commands.length > 0 &&
          ` ${props.commands.map(({ command }) => command).join(', ')} works here too.`}
      </p>
    </form>
  );
};
