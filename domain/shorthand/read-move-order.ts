/** A short message about the studio's own moves and nicknames; names and facts as typed. */
export type MoveOrder =
  | { readonly kind: 'new'; readonly name: string; readonly like: string; readonly facts: string }
  | { readonly kind: 'new, like what?'; readonly name: string }
  | { readonly kind: 'change'; readonly name: string; readonly facts: string }
  | { readonly kind: 'retire' | 'bring back'; readonly name: string }
  | { readonly kind: 'nickname'; readonly nickname: string; readonly name: string }
  | { readonly kind: 'drop nickname'; readonly nickname: string }
  | { readonly kind: 'list' };

type Reads = readonly [pattern: RegExp, order: (first: string, second: string, third: string) => MoveOrder];

const forms: readonly Reads[] = [
  [
    /^new move[: ]\s*(.+?)[,:]?\s+(?:is\s+)?like\s+([^,:]+)(?:[,:]\s*(.*))?$/i,
    (name, like, facts) => ({ kind: 'new', name, like, facts }),
  ],
  [/^new move[: ]\s*([^,:]+).*$/i, (name) => ({ kind: 'new, like what?', name })],
  [/^change move[: ]\s*([^,:]+)[,:]\s*(.+)$/i, (name, facts) => ({ kind: 'change', name, facts })],
  [/^retire move[: ]\s*(.+)$/i, (name) => ({ kind: 'retire', name })],
  [/^bring back move[: ]\s*(.+)$/i, (name) => ({ kind: 'bring back', name })],
  [/^drop nickname[: ]\s*(.+)$/i, (nickname) => ({ kind: 'drop nickname', nickname })],
  [
    /^nickname[: ]\s*(.+?)\s*(?:=|:|\bfor\b|\bis\b)\s*(.+)$/i,
    (nickname, name) => ({ kind: 'nickname', nickname, name }),
  ],
  [/^our moves$/i, () => ({ kind: 'list' })],
];

/** Undefined for a message that is about something else; an order is one line. */
export function readMoveOrder(text: string): MoveOrder | undefined {
  const line = text.trim().replaceAll(/[ \t]+/g, ' ');
  if (line.includes('\n')) return undefined;
  for (const [pattern, order] of forms) {
    const found = pattern.exec(line);
    if (found !== null) return order(found[1]?.trim() ?? '', found[2]?.trim() ?? '', found[3]?.trim() ?? '');
  }
  return undefined;
}
