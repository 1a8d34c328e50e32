import { useEffect, useRef } from 'preact/hooks';
import type { PageState, ShownMessage } from '../page-answers.ts';
import { askServer } from './ask-server.ts';
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
  /** False where it opened by itself while somebody writes beside it. */
  readonly takesFocus: boolean;
}) => {
  const { state, place, threadTs, takesFocus } = props;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (takesFocus) heading.current?.focus();
  }, [threadTs, takesFocus]);
  const shown = props.all.filter((message) => message.ts === threadTs || message.threadTs === threadTs);
  const newReplies = shown.find(({ ts }) => ts === threadTs)?.newReplies ?? 0;
  useEffect(() => {
    if (newReplies > 0) void askServer.read({ as: state.me.id, place, threadTs });
  }, [newReplies, state.me.id, place, threadTs]);
  return (
    <section class="thread" aria-label="Thread">
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
        state={state}
        place={place}
        label="Messages in this thread"
        shown={shown}
        all={props.all}
        timeZone={props.timeZone}
        tell={props.tell}
        emptyText="This message is gone."
      />
      <Composer
        draftKey={`draft ${state.me.id} ${place} ${threadTs}`}
        label="Reply in this thread"
        commands={[]}
        send={props.send}
      />
    </section>
  );
};
