import { useEffect, useLayoutEffect, useRef } from 'preact/hooks';
import type { PageState, ShownMessage } from '../page-answers.ts';
import { MessageCard } from './show-message.tsx';
import { instantOf, printDay } from './show-time.ts';

type Props = {
  readonly state: PageState;
  readonly place: string;
  readonly label: string;
  readonly shown: readonly ShownMessage[];
  readonly all: readonly ShownMessage[];
  readonly timeZone: string;
  readonly tell: (message: string) => void;
  readonly openThread?: (ts: string) => void;
  readonly opened?: string;
  readonly emptyText: string;
  /** True while the messages are on their way. */
  readonly isOpening?: boolean;
};

/** Where the list stands when it shows its newest message, a long one from its first line. */
const newestTop = (list: HTMLElement): number => {
  const newest = list.querySelector<HTMLElement>('.entry:last-child');
  const end = list.scrollHeight - list.clientHeight;
  return newest === null ? end : Math.min(end, newest.offsetTop - 12);
};

/** What one writes within this time of one's last message stands under the same name. */
const continuedMilliseconds = 300_000;

/** Messages from the oldest to the newest, with a line where a day begins; stays at the end while new ones come. */
export const MessageList = (props: Props) => {
  const { state, shown, all, timeZone } = props;
  const box = useRef<HTMLDivElement>(null);
  const content = useRef<HTMLDivElement>(null);
  const isFollowing = useRef(true);
  const followedTop = useRef(0);
  const where = `${state.me.id} ${props.place}`;

  useEffect(() => {
    if (where !== '') isFollowing.current = true;
  }, [where]);

  // What one sends is shown, wherever one had scrolled to.
  const newest = shown.at(-1);
  const ownNewest = newest?.isMine === true ? newest.ts : undefined;
  useLayoutEffect(() => {
    if (ownNewest !== undefined) isFollowing.current = true;
  }, [ownNewest]);

  // Content also grows late, with pictures and a thread beside it, so its size is watched.
  useEffect(() => {
    const watcher = new ResizeObserver(() => {
      if (box.current === null) return;
      followedTop.current = newestTop(box.current);
      if (isFollowing.current) box.current.scrollTop = followedTop.current;
    });
    if (box.current !== null) watcher.observe(box.current);
    if (content.current !== null) watcher.observe(content.current);
    return () => watcher.disconnect();
  }, []);

  const dayOf = (message: ShownMessage) => printDay(instantOf(message.ts), timeZone);
  const repliesTo = (message: ShownMessage) =>
    all.filter(({ threadTs, ts }) => threadTs === message.ts && ts !== message.ts);
  const continues = (before: ShownMessage, message: ShownMessage): boolean =>
    message.authorKind === 'person' &&
    before.authorId === message.authorId &&
    instantOf(message.ts).getTime() - instantOf(before.ts).getTime() < continuedMilliseconds &&
    (props.openThread === undefined || repliesTo(before).length === 0);
  return (
    <div
      class="list"
      ref={box}
      role="log"
      aria-label={props.label}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the list scrolls by keyboard
      tabIndex={0}
      onScroll={(event) => {
        // Against the place last followed: a message that came since then is no sign of scrolling away.
        isFollowing.current = event.currentTarget.scrollTop >= followedTop.current - 80;
      }}
    >
      <div ref={content}>
        {shown.length === 0 && props.isOpening !== true && <p class="empty">{props.emptyText}</p>}
        {shown.map((message, index) => {
          const before = shown[index - 1];
          const isNewDay = before === undefined || dayOf(before) !== dayOf(message);
          return (
            <div class="entry" key={message.ts}>
              {isNewDay && <p class="day">{dayOf(message)}</p>}
              <MessageCard
                as={state.me.id}
                place={props.place}
                message={message}
                role={state.people.find(({ id }) => id === message.authorId)?.role ?? ''}
                replies={repliesTo(message)}
                isContinued={!isNewDay && continues(before, message)}
                timeZone={timeZone}
                shortcuts={state.messageShortcuts}
                tell={props.tell}
                {...(props.openThread === undefined ? {} : { openThread: props.openThread })}
                {...(props.opened === undefined ? {} : { opened: props.opened })}
              />
            </div>
          );
        })}
      </div>
    </div>
  );
};
