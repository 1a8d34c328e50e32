import { useEffect, useRef } from 'preact/hooks';
import type { PageState, ShownMessage } from '../page-answers.ts';
import { Composer } from './composer.tsx';
import { MessageList } from './message-list.tsx';

/** A thread: beside the messages on a laptop, over them on a phone. */
export const ThreadPane = (props: {
  readonly state: PageState;
  readonly place: string;
  readonly placeName: string;
  readonly threadTs: string;
  readonly all: readonly ShownMessage[];
  readonly timeZone: string;
  readonly tell: (message: string) => void;
  readonly send: (text: string) => Promise<boolean>;
  readonly close: () => void;
}) => {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [props.threadTs]);
  const shown = props.all.filter(({ ts, threadTs }) => ts === props.threadTs || threadTs === props.threadTs);
  return (
    <section
      class="thread"
      aria-label="Thread"
      onKeyDown={(event) => {
        if (event.key === 'Escape' && !event.defaultPrevented) props.close();
      }}
    >
      <header class="thread-head">
        <button type="button" class="quiet" aria-label="Close the thread" onClick={props.close}>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d="M10 3L5 8l5 5" />
          </svg>
        </button>
        <h2 ref={heading} tabIndex={-1}>
          Thread <span class="soft">{props.placeName}</span>
        </h2>
      </header>
      <MessageList
        state={props.state}
        place={props.place}
        label="Messages in this thread"
        shown={shown}
        all={props.all}
        timeZone={props.timeZone}
        tell={props.tell}
        emptyText="This message is gone."
      />
      <Composer
        draftKey={`draft ${props.state.me.id} ${props.place} ${props.threadTs}`}
        label="Reply in this thread"
        commands={[]}
        send={props.send}
      />
    </section>
  );
};
