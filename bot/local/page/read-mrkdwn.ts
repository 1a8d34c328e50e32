/** One piece of a message's text; styles hold further pieces. */
export type MrkdwnToken =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'break' }
  | { readonly kind: 'bold' | 'italic' | 'strike'; readonly tokens: readonly MrkdwnToken[] }
  | { readonly kind: 'quote'; readonly tokens: readonly MrkdwnToken[] }
  | { readonly kind: 'code' | 'pre'; readonly text: string }
  | { readonly kind: 'link'; readonly url: string; readonly label: string }
  | { readonly kind: 'person'; readonly id: string; readonly label?: string }
  | { readonly kind: 'channel'; readonly id: string; readonly label?: string }
  | { readonly kind: 'everyone'; readonly word: string }
  | { readonly kind: 'date'; readonly seconds: number; readonly format: string; readonly fallback: string };

/** The three characters with a meaning of their own, made plain. */
export const escapeEntities = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

export const readEntities = (text: string): string =>
  text.replace(/&lt;/g, '<').replace(/&gt;/g, '>').replace(/&amp;/g, '&');

const plain = (text: string): readonly MrkdwnToken[] => {
  const lines = readEntities(text).split('\n');
  return lines.flatMap((line, index): readonly MrkdwnToken[] => [
    ...(index === 0 ? [] : [{ kind: 'break' } as const]),
    ...(line === '' ? [] : [{ kind: 'text', text: line } as const]),
  ]);
};

const readAngle = (inside: string): MrkdwnToken => {
  const bar = inside.indexOf('|');
  const target = bar < 0 ? inside : inside.slice(0, bar);
  const label = bar < 0 ? undefined : readEntities(inside.slice(bar + 1));
  const labelled = label === undefined || label === '' ? {} : { label };
  if (/^@[UW]\w+$/.test(target)) return { kind: 'person', id: target.slice(1), ...labelled };
  if (/^#C\w+$/.test(target)) return { kind: 'channel', id: target.slice(1), ...labelled };
  if (/^!(here|channel|everyone)$/.test(target)) return { kind: 'everyone', word: target.slice(1) };
  const date = /^!date\^(\d+)\^([^^]*)(?:\^.*)?$/.exec(target);
  if (date !== null)
    return { kind: 'date', seconds: Number(date[1]), format: date[2] ?? '', fallback: label ?? '' };
  if (/^(https?:\/\/|mailto:)/.test(target)) {
    const url = readEntities(target);
    return { kind: 'link', url, label: label ?? url.replace(/^mailto:/, '') };
  }
  return { kind: 'text', text: readEntities(`<${inside}>`) };
};

type Rule = { readonly pattern: RegExp; readonly token: (match: RegExpExecArray) => MrkdwnToken };

const styled = (mark: string, kind: 'bold' | 'italic' | 'strike'): Rule => ({
  // A mark opens after a word's edge and closes before one, on the same line, with no space just inside.
  pattern: new RegExp(
    `(?<![\\p{L}\\p{N}${mark}])${mark}(?=[^\\s${mark}])([^\\n${mark}]*?[^\\s${mark}])${mark}(?![\\p{L}\\p{N}${mark}])`,
    'u',
  ),
  token: (match) => ({ kind, tokens: readInline(match[1] ?? '') }),
});

const rules: readonly Rule[] = [
  {
    pattern: /```\n?([\s\S]+?)\n?```/,
    token: (match) => ({ kind: 'pre', text: readEntities(match[1] ?? '') }),
  },
  { pattern: /`([^`\n]+)`/, token: (match) => ({ kind: 'code', text: readEntities(match[1] ?? '') }) },
  { pattern: /<([^<>\n]+)>/, token: (match) => readAngle(match[1] ?? '') },
  styled('\\*', 'bold'),
  styled('_', 'italic'),
  styled('~', 'strike'),
];

const readInline = (text: string): readonly MrkdwnToken[] => {
  const tokens: MrkdwnToken[] = [];
  let rest = text;
  while (rest !== '') {
    const first = rules
      .flatMap((rule) => {
        const match = rule.pattern.exec(rest);
        return match === null ? [] : [{ rule, match }];
      })
      .reduce<{ rule: Rule; match: RegExpExecArray } | undefined>(
        (best, each) => (best === undefined || each.match.index < best.match.index ? each : best),
        undefined,
      );
    if (first === undefined) return [...tokens, ...plain(rest)];
    tokens.push(...plain(rest.slice(0, first.match.index)), first.rule.token(first.match));
    rest = rest.slice(first.match.index + first.match[0].length);
  }
  return tokens;
};

/**
 * Reads the platform's message markup: *bold*, _italic_, ~strike~, `code`, ```blocks```, > quotes, links,
 * mentions, dates and the three entities. Everything else stays inert text.
 */
export const readMrkdwn = (text: string): readonly MrkdwnToken[] => {
  const parts = text.split(/((?:^|(?<=\n))&gt;[^\n]*(?:\n&gt;[^\n]*)*\n?)/);
  return parts.flatMap((part, index): readonly MrkdwnToken[] =>
    index % 2 === 0
      ? readInline(part)
      : [{ kind: 'quote', tokens: readInline(part.replace(/^&gt; ?/gm, '').replace(/\n$/, '')) }],
  );
};

const dateParts: Readonly<Record<string, Intl.DateTimeFormatOptions>> = {
  date_num: { year: 'numeric', month: '2-digit', day: '2-digit' },
  date: { year: 'numeric', month: 'long', day: 'numeric' },
  date_short: { year: 'numeric', month: 'short', day: 'numeric' },
  date_long: { weekday: 'long', year: 'numeric', month: 'long', day: 'numeric' },
  date_pretty: { month: 'long', day: 'numeric' },
  date_short_pretty: { weekday: 'short', month: 'short', day: 'numeric' },
  date_long_pretty: { weekday: 'long', month: 'long', day: 'numeric' },
  time: { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' },
  time_secs: { hour: '2-digit', minute: '2-digit', second: '2-digit', hourCycle: 'h23' },
};

const dayOf = (date: Date, timeZone: string) =>
  new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(
    date,
  );

/**
 * A date token in the reader's zone. The *pretty* forms say today, tomorrow or yesterday, counted from `now`
 * (ISO, UTC). An unknown placeholder gives the fallback.
 */
export const printDate = (
  token: { readonly seconds: number; readonly format: string; readonly fallback: string },
  timeZone: string,
  now: string,
): string => {
  const date = new Date(token.seconds * 1000);
  const today = new Date(now);
  const dayMs = 86_400_000;
  const near = [
    ['today', today],
    ['tomorrow', new Date(today.getTime() + dayMs)],
    ['yesterday', new Date(today.getTime() - dayMs)],
  ] as const;
  const unknown = [...token.format.matchAll(/\{(\w+)\}/g)].some(
    ([, name]) => dateParts[name ?? ''] === undefined,
  );
  if (unknown) return token.fallback;
  return token.format.replace(/\{(\w+)\}/g, (_whole, name: string) => {
    const word = name.endsWith('_pretty')
      ? near.find(([, day]) => dayOf(day, timeZone) === dayOf(date, timeZone))?.[0]
      : undefined;
    return (
      word ?? new Intl.DateTimeFormat('en-GB', { timeZone, ...dateParts[name] }).format(date).replace(',', '')
    );
  });
};

/** Markup as the words alone, for a place that holds no links: names stand for ids. */
export const printPlain = (
  tokens: readonly MrkdwnToken[],
  names: {
    readonly nameOf: (userId: string) => string;
    readonly channelNameOf: (channelId: string) => string;
  },
): string => tokens.map((token) => plainToken(token, names)).join('');

const plainToken = (token: MrkdwnToken, names: Parameters<typeof printPlain>[1]): string => {
  switch (token.kind) {
    case 'text':
    case 'code':
    case 'pre':
      return token.text;
    case 'break':
      return ' ';
    case 'bold':
    case 'italic':
    case 'strike':
    case 'quote':
      return printPlain(token.tokens, names);
    case 'link':
      return token.label;
    case 'person':
      return `@${names.nameOf(token.id)}`;
    case 'channel':
      return `#${names.channelNameOf(token.id)}`;
    case 'everyone':
      return `@${token.word}`;
    case 'date':
      return token.fallback;
  }
};
