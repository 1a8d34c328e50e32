import { useState } from 'preact/hooks';
import type { TrafficEntry } from '../page-answers.ts';
import { Dialog } from './dialog.tsx';

const Json = ({ label, value }: { readonly label: string; readonly value: unknown }) =>
  value === undefined ? null : (
    <>
      <h3>{label}</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: long lines scroll sideways by keyboard too */}
      <pre tabIndex={0}>{typeof value === 'string' ? value : JSON.stringify(value, undefined, 2)}</pre>
    </>
  );

/** Every exchange between the workspace and the app, newest first. */
export const TrafficView = (props: {
  readonly entries: readonly TrafficEntry[];
  readonly reset: () => Promise<void>;
}) => {
  const [isAsking, setAsking] = useState(false);
  const [isResetting, setResetting] = useState(false);
  return (
    <section class="scroll-page" aria-label="What was sent">
      <div class="traffic-head">
        <p class="soft">Calls and deliveries between workspace and app, newest first. Open one to read it.</p>
        <button type="button" class="button danger" onClick={() => setAsking(true)}>
          Reset the workspace
        </button>
      </div>
      {isAsking && (
        <Dialog title="Reset the workspace?" close={() => setAsking(false)} isNarrow>
          <div class="dialog-body" aria-busy={isResetting}>
            <p>Everything written here is deleted and the clock goes back to its start.</p>
          </div>
          <footer class="dialog-foot">
            <button type="button" class="button" onClick={() => setAsking(false)}>
              Keep everything
            </button>
            <button
              type="button"
              class="button danger"
              disabled={isResetting}
              onClick={async () => {
                setResetting(true);
                await props.reset();
                setResetting(false);
                setAsking(false);
              }}
            >
              Reset
            </button>
          </footer>
        </Dialog>
      )}
      {props.entries.length === 0 && <p class="empty">Nothing was sent yet.</p>}
      <ol class="traffic">
        {[...props.entries].reverse().map((entry) => (
          <li key={entry.id}>
            <details>
              <summary>
                <span class="direction">{entry.direction === 'to-app' ? 'to app' : 'from app'}</span>
                <strong>{entry.name}</strong>
                <span class={entry.isFine ? 'outcome' : 'outcome bad'}>{entry.outcome}</span>
                <span class="soft">{entry.milliseconds} ms</span>
              </summary>
              <Json label="Sent" value={entry.sent} />
              <Json label="Answered" value={entry.answered} />
            </details>
          </li>
        ))}
      </ol>
    </section>
  );
};
