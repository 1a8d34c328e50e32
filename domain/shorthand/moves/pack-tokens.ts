import type { Token } from '../tokens-of.ts';

/** A token of a move line, where a note in round brackets and words in quotes are one token each. */
export type MoveToken = Omit<Token, 'kind'> & { readonly kind: Token['kind'] | 'note' | 'quote' };

/** Brackets and quotes packed; an opening one that is never closed runs to the end of the line. */
export function packTokens(tokens: readonly Token[]): readonly MoveToken[] {
  const packed: MoveToken[] = [];
  for (let at = 0; at < tokens.length; ) {
    const token = tokens[at];
    if (token === undefined) break;
    const sides = rightAndLeft(tokens, at);
    if (sides !== undefined) {
      packed.push(sides);
      at += 3;
      continue;
    }
    const kind = token.text === '(' ? 'note' : token.text === '"' ? 'quote' : undefined;
    if (kind === undefined) {
      packed.push(token);
      at += 1;
      continue;
    }
    const close = kind === 'note' ? closingBracket(tokens, at) : closingQuote(tokens, at);
    const last = tokens[Math.min(close, tokens.length - 1)] ?? token;
    packed.push({ ...token, kind, text: kind, end: last.end });
    at = close + 1;
  }
  return packed;
}

/** `L + R` is one side word, not two moves back to back. */
function rightAndLeft(tokens: readonly Token[], at: number): Token | undefined {
  const [one, joiner, other] = tokens.slice(at, at + 3);
  if (one === undefined || joiner === undefined || other === undefined) return undefined;
  const isBoth = ['l r', 'r l', 'left right', 'right left'].includes(`${one.text} ${other.text}`);
  return isBoth && ['+', '&', 'and'].includes(joiner.text)
    ? { ...one, text: 'l/r', end: other.end }
    : undefined;
}

function closingBracket(tokens: readonly Token[], open: number): number {
  let depth = 0;
  for (let at = open; at < tokens.length; at += 1) {
    if (tokens[at]?.text === '(') depth += 1;
    if (tokens[at]?.text === ')') depth -= 1;
    if (depth === 0) return at;
  }
  return tokens.length;
}

function closingQuote(tokens: readonly Token[], open: number): number {
  const close = tokens.findIndex((token, at) => at > open && token.text === '"');
  return close === -1 ? tokens.length : close;
}

/** The words inside brackets or quotes, without the marks themselves. */
export function innerText(text: string, token: MoveToken): string {
  return plainWords(text.slice(token.start, token.end).replaceAll(/[()"“”„″]/g, ' '));
}

/** Words on one line with single spaces. */
export function plainWords(words: string): string {
  return words.replaceAll(/\s+/g, ' ').trim();
}

/** The stretches between this sign; empty ones are left out. */
export function piecesOf(tokens: readonly MoveToken[], sign: string): readonly (readonly MoveToken[])[] {
  const pieces: MoveToken[][] = [[]];
  for (const token of tokens) {
    if (token.text === sign) pieces.push([]);
    else pieces.at(-1)?.push(token);
  }
  return pieces.filter((piece) => piece.length > 0);
}
