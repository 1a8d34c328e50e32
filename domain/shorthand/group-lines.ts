import type { KitItem } from '../catalogue/kit.ts';
import { type BlockLine, readBlockLine } from './blocks/read-block-line.ts';
import { partInlineMoves } from './inline-moves.ts';
import { limits } from './limits.ts';
import type { Line } from './lines-of.ts';
import { plainWords } from './moves/pack-tokens.ts';
import { isKitLine, readKitLine } from './read-kit-line.ts';
import { type Told, tellProblem } from './told.ts';

/** A line below a block line. */
export type BelowLine =
  | { readonly kind: 'moves'; readonly line: Line }
  | { readonly kind: 'say'; readonly line: Line; readonly words: string }
  | { readonly kind: 'each round'; readonly line: Line; readonly seconds: number };

/** A block line with the lines below it, up to the next block word. */
export type Section = { readonly line: Line; readonly head: BlockLine; readonly below: readonly BelowLine[] };

export type Grouped = { readonly sections: readonly Section[]; readonly kit?: readonly KitItem[] };

const sayLine = /^\s*say\s*:/;

/** The lines behind the title by block; lines that belong to none are told. */
export function groupLines(lines: readonly Line[], told: Told): Grouped {
  const sections: { line: Line; head: BlockLine; below: BelowLine[] }[] = [];
  let kit: { readonly items?: readonly KitItem[] } | undefined;
  for (const line of lines.flatMap((each) => partInlineMoves(each, told))) {
    if (isKitLine(line)) {
      if (kit !== undefined)
        tellProblem(told, line.number, spanOfLine(line), { code: 'said-twice', what: 'kit' });
      const items = readKitLine(line, told);
      kit ??= items === undefined ? {} : { items };
      continue;
    }
    const current = sections.at(-1);
    const head = readBlockLine(line, told);
    if (head === undefined) {
      const below = belowLine(line, told);
      if (current !== undefined) current.below.push(below);
      else tellBeforeBlock(below, told);
    } else if (head.shape === 'time' && head.time?.kind === 'each round') {
      const seconds = head.time.seconds;
      if (current?.head.shape === 'letters') current.below.push({ kind: 'each round', line, seconds });
      else tellEachRound(line, head, told);
    } else if (sections.length === limits.blocks) {
      tellProblem(told, line.number, spanOfLine(line), {
        code: 'too-many',
        what: 'blocks',
        most: limits.blocks,
      });
      break;
    } else {
      sections.push({ line, head, below: [] });
    }
  }
  return { sections, ...(kit?.items && { kit: kit.items }) };
}

function belowLine(line: Line, told: Told): BelowLine {
  const mark = sayLine.exec(line.clean);
  if (mark === null) return { kind: 'moves', line };
  const from = line.start + mark[0].length;
  return { kind: 'say', line, words: plainWords(told.text.slice(from, line.start + line.text.length)) };
}

function tellBeforeBlock(below: BelowLine, told: Told): void {
  const code = below.kind === 'say' ? 'say-without-letter' : 'line-before-block';
  tellProblem(told, below.line.number, spanOfLine(below.line), { code });
}

function tellEachRound(line: Line, head: BlockLine, told: Told): void {
  const problem = { code: 'not-here', what: 'each round', block: head.kind } as const;
  tellProblem(told, line.number, spanOfLine(line), problem);
}

/** The line without blanks at its ends. */
export function spanOfLine(line: Line): { readonly start: number; readonly end: number } {
  const leading = line.clean.length - line.clean.trimStart().length;
  return { start: line.start + leading, end: line.start + line.clean.trimEnd().length };
}
