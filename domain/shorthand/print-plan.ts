import { type Catalogue, catalogue as wholeCatalogue } from '../catalogue/catalogue.ts';
import { hasLetters, isOpenBlock } from '../plan/blocks-of.ts';
import type { Block, Plan } from '../plan/plan.ts';
import { printBlockLine } from './print-block-line.ts';
import { printKitLine, printTitleLine } from './print-facts.ts';
import { printItems, printMoveLine } from './print-letter.ts';

/**
 * A plan in the one canonical form: reading it again gives the same plan, up to spans, ids and notes. The
 * catalogue gives the names; a studio's own moves need the studio's.
 */
export function printPlan({ facts, blocks }: Plan, catalogue: Catalogue = wholeCatalogue): string {
  return [
    printTitleLine(facts),
    ...(facts.kit === undefined ? [] : [printKitLine(facts.kit)]),
    ...blocks.flatMap((block) => printBlock(block, catalogue)),
  ].join('\n');
}

/** A block's line and all lines below it. */
function printBlock(block: Block, catalogue: Catalogue): readonly string[] {
  const line = printBlockLine(block);
  if (hasLetters(block)) {
    const below = block.letters.flatMap((letter) => [
      printMoveLine(letter, catalogue),
      ...letter.say.map(printSay),
    ]);
    return [line, ...below];
  }
  if (!isOpenBlock(block)) return [line];
  const items = printItems(block.items, catalogue);
  return [items === '' ? line : `${line}: ${items}`, ...block.say.map(printSay)];
}

function printSay(words: string): string {
  return `say: ${words}`;
}

export { printBlockLine, printMoveLine };
