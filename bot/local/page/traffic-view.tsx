import { useId, useState } from 'preact/hooks';
import type { ShownGroup, TrafficEntry, TrafficLine } from '../page-answers.ts';
import { askServer } from './ask-server.ts';
import { GroupsControl } from './groups-control.tsx';
import { ResetControl } from './reset-control.tsx';

const printJson = (value: unknown): string => {
  if (value === '') return 'nothing beside the status';
  return typeof value === 'string' ? value : JSON.stringify(value, undefined, 2);
};

const Json = ({ label, value }: { readonly label: string; readonly value: unknown }) =>
  value === undefined ? null : (
    <>
      <h3>{label}</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: long lines scroll sideways by keyboard too */}
      <pre tabIndex={0}>{printJson(value)}</pre>
    </>
  );

const Exchange = ({ line }: { readonly line: TrafficLine }) => {
  const [entry, setEntry] = useState<TrafficEntry | undefined>(undefined);
  return (
    <details
      onToggle={async (event) => {
        if (event.currentTarget.open) setEntry(await askServer.exchange(line.id));
      }}
    >
      <summary>
        <span class="direction">{line.direction === 'to-app' ? 'to app' : 'from app'}</span>
        <strong>{line.name}</strong>
        <span class={line.isFine ? 'outcome' : 'outcome bad'}>{line.outcome}</span>
        <span class="soft">{line.milliseconds} ms</span>
      </summary>
      <Json label="Sent" value={entry?.sent} />
      <Json label="Answered" value={entry?.answered} />
    </details>
  );
};

/** Every exchange between the workspace and the app, newest first. */
export const TrafficView = (props: {
  readonly lines: readonly TrafficLine[];
  readonly groups: readonly ShownGroup[];
  readonly canReset: boolean;
  readonly whenReset: () => void;
}) => {
  const fieldId = useId();
  const [wanted, setWanted] = useState('');
  const found = props.lines.filter(({ name, outcome }) =>
    `${name} ${outcome}`.toLowerCase().includes(wanted.trim().toLowerCase()),
  );
  return (
    <section class="scroll-page" aria-label="What was sent">
      <div class="traffic-head">
        <p class="soft">Calls and deliveries between workspace and app, newest first. Open one to read it.</p>
        {props.groups.length > 0 && <GroupsControl groups={props.groups} />}
        {props.canReset && <ResetControl whenDone={props.whenReset} />}
      </div>
      <div class="traffic-find">
        <label for={fieldId}>Find by name or outcome</label>
        <input
          id={fieldId}
          type="search"
          placeholder="chat.update"
          value={wanted}
          onInput={(event) => setWanted(event.currentTarget.value)}
        />
      </div>
      {found.length === 0 && (
        <p class="empty">{props.lines.length === 0 ? 'Nothing was sent yet.' : 'None is called that.'}</p>
      )}
      <ol class="traffic">
        {found.toReversed().map((line) => (
          <li key={line.id}>
            <Exchange line={line} />
          </li>
        ))}
      </ol>
    </section>
  );
};
