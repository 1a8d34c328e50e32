import { useContext, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { LocalShortcut } from '../local-app.ts';
import type { ShownMessage } from '../page-answers.ts';
import { askServer } from './ask-server.ts';
import { Composer } from './composer.tsx';
import { Menu } from './menu.tsx';
import { printPlain, readMrkdwn } from './read-mrkdwn.ts';
import { type Reader, ReaderContext } from './reader.ts';
import { ShowBlock } from './show-block.tsx';
import { ShowImage } from './show-image.tsx';
import { Mrkdwn } from './show-text.tsx';
import { instantOf, printTime } from './show-time.ts';
import { useSurface } from './use-surface.ts';

type Props = {
  readonly as: string;
  readonly place: string;
  readonly message: ShownMessage;
  readonly role: string;
  readonly replies: readonly ShownMessage[];
  readonly timeZone: string;
  readonly shortcuts: readonly LocalShortcut[];
  readonly tell: (message: string) => void;
  /** Follows a message of the same person at once, and needs no name of its own. */
  readonly isContinued: boolean;
  /** Left out inside a thread. */
  readonly openThread?: (ts: string) => void;
  /** The thread that is open beside the messages. */
  readonly opened?: string;
};

/** The first words of a reply, as plain text. */
const firstLine = (text: string, reader: Reader): string =>
  printPlain(readMrkdwn(text.split('\n').find((line) => line.trim() !== '') ?? ''), reader).slice(0, 160);

/** For how long after a click an update may take the clicked button away. */
const updateMilliseconds = 5_000;

/** Keeps the focus in an element whose clicked button an update takes away. */
const useKeptFocus = (isBusy: boolean) => {
  const element = useRef<HTMLElement>(null);
  const clickedAt = useRef(-updateMilliseconds);
  useLayoutEffect(() => {
    if (isBusy && element.current?.contains(document.activeElement) === true)
      clickedAt.current = performance.now();
  }, [isBusy]);
  useLayoutEffect(() => {
    const isRecent = performance.now() - clickedAt.current < updateMilliseconds;
    if (isRecent && document.activeElement === document.body) element.current?.focus({ preventScroll: true });
  });
  return element;
};

const countWords = (replies: number): string => {
  if (replies === 0) return 'For you alone';
  return replies === 1 ? '1 reply' : `${replies} replies`;
};

/** One message with what one can do to it. */
export const MessageCard = (props: Props) => {
  const { as, place, message, tell, openThread } = props;
  const [isEditing, setEditing] = useState(false);
  const reader = useContext(ReaderContext);
  const form = useSurface(as, { kind: 'message', place, ts: message.ts }, tell);
  const article = useKeptFocus(form.isBusy);
  const time = printTime(instantOf(message.ts), props.timeZone);
  const answers = props.replies.filter(({ isOnlyForMe }) => !isOnlyForMe);
  const latest = answers.at(-1) ?? props.replies.at(-1);
  const isOpened = props.opened === message.ts;

  const run = async (gesture: ReturnType<typeof askServer.edit>): Promise<boolean> => {
    const result = await gesture;
    if (result.kind === 'failed') tell(result.message);
    return result.kind === 'done';
  };

  const items = [
    ...(openThread === undefined || message.isOnlyForMe
      ? []
      : [{ label: 'Reply in thread', choose: () => openThread(message.ts) }]),
    ...(message.isMine ? [{ label: 'Edit', choose: () => setEditing(true) }] : []),
    ...(message.isOnlyForMe
      ? []
      : props.shortcuts.map((shortcut) => ({
          label: shortcut.name,
          choose: () =>
            void run(askServer.shortcut({ as, place, ts: message.ts, callbackId: shortcut.callbackId })),
        }))),
  ];

  const classes = [
    'message',
    message.authorKind,
    ...(message.isOnlyForMe ? ['only-me'] : []),
    ...(props.isContinued ? ['continued'] : []),
  ].join(' ');
  return (
    <article
      class={classes}
      aria-label={`${message.authorName}, ${time}`}
      data-ts={message.ts}
      ref={article}
      tabIndex={-1}
    >
      <header class="byline">
        <span class="author">{message.authorName}</span>
        {props.role !== '' && <span class="role">{props.role}</span>}
        <time>{time}</time>
        {message.isEdited && <span class="edited">edited</span>}
        {items.length > 0 && (
          <Menu label={`Actions for the message of ${message.authorName}`} items={items} />
        )}
      </header>
      {message.isOnlyForMe && <p class="only-you">Only you can see this</p>}
      {isEditing ? (
        <Composer
          label="Edit your message"
          commands={[]}
          initial={message.typed ?? ''}
          sendLabel="Save"
          cancel={() => setEditing(false)}
          send={async (text) => {
            const isSaved = await run(askServer.edit({ as, place, ts: message.ts, text }));
            if (isSaved) setEditing(false);
            return isSaved;
          }}
        />
      ) : (
        <div class={form.isBusy ? 'content busy' : 'content'} aria-busy={form.isBusy}>
          {message.blocks === undefined ? (
            <p class="text">
              <Mrkdwn text={message.text} />
            </p>
          ) : (
            message.blocks.map((block) => <ShowBlock key={block.block_id} block={block} form={form} />)
          )}
          {message.files.map((file) =>
            /\.(png|jpe?g|gif)$/i.test(file.name) ? (
              <ShowImage key={file.id} image={{ alt_text: file.name, slack_file: { id: file.id } }} />
            ) : (
              <a class="file" key={file.id} href={`/files/${file.id}`}>
                {file.name}
              </a>
            ),
          )}
          {message.reactions.length > 0 && (
            <ul class="reactions" aria-label="Reactions">
              {message.reactions.map(({ name, count }) => (
                <li key={name}>
                  {name.replaceAll('_', ' ')} {count}
                </li>
              ))}
            </ul>
          )}
        </div>
      )}
      {latest !== undefined && openThread !== undefined && (
        <button
          type="button"
          class="thread-button"
          data-thread={message.ts}
          aria-current={isOpened ? 'true' : undefined}
          onClick={() => openThread(message.ts)}
        >
          <strong>{countWords(answers.length)}</strong>
          {message.newReplies > 0 && !isOpened && <span class="count">{message.newReplies} new</span>}
          <span class="thread-preview">
            {latest.authorName}: {firstLine(latest.text, reader)}
          </span>
        </button>
      )}
    </article>
  );
};
