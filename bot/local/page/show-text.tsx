import { useContext } from 'preact/hooks';
import type { AcceptedText } from '../accepted-elements.ts';
import { type MrkdwnToken, printDate, readEntities, readMrkdwn } from './read-mrkdwn.ts';
import { ReaderContext } from './reader.ts';

const Tokens = ({ tokens }: { readonly tokens: readonly MrkdwnToken[] }) => (
  <>
    {tokens.map((token, index) => (
      <Token key={index} token={token} />
    ))}
  </>
);

const Token = ({ token }: { readonly token: MrkdwnToken }) => {
  const reader = useContext(ReaderContext);
  switch (token.kind) {
    case 'text':
      return <>{token.text}</>;
    case 'break':
      return <br />;
    case 'bold':
      return (
        <strong>
          <Tokens tokens={token.tokens} />
        </strong>
      );
    case 'italic':
      return (
        <em>
          <Tokens tokens={token.tokens} />
        </em>
      );
    case 'strike':
      return (
        <s>
          <Tokens tokens={token.tokens} />
        </s>
      );
    case 'quote':
      return (
        <blockquote>
          <Tokens tokens={token.tokens} />
        </blockquote>
      );
    case 'code':
      return <code>{token.text}</code>;
    case 'pre':
      // biome-ignore lint/a11y/noNoninteractiveTabindex: long lines scroll sideways by keyboard too
      return <pre tabIndex={0}>{token.text}</pre>;
    case 'link':
      return <TextLink url={token.url} label={token.label} />;
    case 'person':
      return <span class="mention">@{reader.nameOf(token.id)}</span>;
    case 'channel':
      return <span class="mention">#{reader.channelNameOf(token.id)}</span>;
    case 'everyone':
      return <span class="mention">@{token.word}</span>;
    case 'date':
      return (
        <time dateTime={new Date(token.seconds * 1000).toISOString()}>
          {printDate(token, reader.timeZone, reader.now)}
        </time>
      );
  }
};

export const TextLink = ({ url, label }: { readonly url: string; readonly label: string }) => {
  const reader = useContext(ReaderContext);
  return (
    <a
      href={url}
      rel="noreferrer noopener"
      target="_blank"
      onClick={(event) => {
        if (reader.follow(url)) event.preventDefault();
      }}
    >
      {label}
    </a>
  );
};

/** Message markup, shown. */
export const Mrkdwn = ({ text }: { readonly text: string }) => <Tokens tokens={readMrkdwn(text)} />;

/** A text object: markup or plain text with its line breaks. */
export const ShowText = ({ text }: { readonly text: AcceptedText }) =>
  text.type === 'mrkdwn' ? <Mrkdwn text={text.text} /> : <span class="plain">{readEntities(text.text)}</span>;
