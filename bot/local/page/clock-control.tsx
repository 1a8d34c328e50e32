import { useId, useState } from 'preact/hooks';
import type { ClockTarget, GestureResult, ShownClock } from '../page-answers.ts';
import { askServer } from './ask-server.ts';
import { Dialog } from './dialog.tsx';
import { ResetControl } from './reset-control.tsx';
import { printDay, printFieldTime, printShortDay, printTime } from './show-time.ts';

const steps: readonly { readonly label: string; readonly target: ClockTarget }[] = [
  { label: '+5 min', target: { kind: 'minutes', minutes: 5 } },
  { label: '+15 min', target: { kind: 'minutes', minutes: 15 } },
  { label: '+1 h', target: { kind: 'minutes', minutes: 60 } },
  { label: '+1 day', target: { kind: 'minutes', minutes: 24 * 60 } },
];

/** The studio's clock: it stands still until someone moves it, and moving it lets everything due happen. */
export const ClockControl = (props: {
  readonly clock: ShownClock;
  readonly canReset: boolean;
  readonly whenReset: () => void;
}) => {
  const { now, timeZone, nextDueAt } = props.clock;
  const [trouble, setTrouble] = useState('');
  const [isOpen, setOpen] = useState(false);
  const [isMoving, setMoving] = useState(false);
  const [wallTime, setWallTime] = useState('');
  const fieldId = useId();
  const instant = new Date(now);

  const run = async (gesture: Promise<GestureResult>) => {
    setMoving(true);
    const result = await gesture;
    setMoving(false);
    setTrouble(result.kind === 'failed' ? result.message : '');
  };
  const move = (target: ClockTarget) => void run(askServer.moveClock(target));
  const due = nextDueAt === undefined ? undefined : new Date(nextDueAt);

  return (
    <>
      <button
        type="button"
        class="clock-button"
        aria-haspopup="dialog"
        onClick={() => {
          setWallTime(printFieldTime(instant, timeZone));
          setTrouble('');
          setOpen(true);
        }}
      >
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <circle cx="8" cy="8" r="6.2" />
          <path d="M8 4.6V8l2.4 1.6" />
        </svg>
        <span>
          <span class="spoken">Studio clock: </span>
          {printShortDay(instant, timeZone)} <strong>{printTime(instant, timeZone)}</strong>
          <span class="spoken">, move it</span>
        </span>
      </button>
      {isOpen && (
        <Dialog title="Move the clock" close={() => setOpen(false)} isNarrow>
          <div class="dialog-body clock" aria-busy={isMoving}>
            <p class="clock-now" aria-live="polite">
              <strong>{printTime(instant, timeZone)}</strong> {printDay(instant, timeZone)}
              <span class="clock-zone">{isMoving ? 'moving …' : timeZone}</span>
            </p>
            <p class="soft">
              Studio time stands still until you move it. On the way, everything that falls due happens.
            </p>
            <div class="steps">
              {steps.map(({ label, target }) => (
                <button
                  type="button"
                  class="button"
                  key={label}
                  disabled={isMoving}
                  onClick={() => move(target)}
                >
                  {label}
                </button>
              ))}
            </div>
            <button
              type="button"
              class="button wide primary"
              disabled={isMoving || due === undefined}
              onClick={() => move({ kind: 'next-due' })}
            >
              {due === undefined
                ? 'Nothing is due'
                : `Next thing due: ${printShortDay(due, timeZone)}, ${printTime(due, timeZone)}`}
            </button>
            <button
              type="button"
              class="button wide"
              disabled={isMoving}
              onClick={() => move({ kind: 'monday-seven' })}
            >
              To Monday 07:00
            </button>
            <form
              class="to-time"
              onSubmit={(event) => {
                event.preventDefault();
                move({ kind: 'wall-time', wallTime });
              }}
            >
              <label for={fieldId}>To a day and time</label>
              <input
                id={fieldId}
                type="datetime-local"
                required
                value={wallTime}
                onInput={(event) => setWallTime(event.currentTarget.value)}
              />
              <button type="submit" class="button" disabled={isMoving}>
                Go
              </button>
            </form>
            {props.canReset && (
              <ResetControl
                whenDone={() => {
                  setOpen(false);
                  props.whenReset();
                }}
              />
            )}
            <p class="foot-note" role="alert">
              {trouble}
            </p>
          </div>
        </Dialog>
      )}
    </>
  );
};
