import { printDay } from '../calendar/days-meant.ts';
import type { Catalogue } from '../catalogue/catalogue.ts';
import { isOpenBlock } from '../plan/blocks-of.ts';
import { type LabelledLetter, labelledLetters } from '../plan/labels.ts';
import type { Block, LineId, Plan, PlanFacts, SideUse } from '../plan/plan.ts';
import { printBlockLine } from './print-block-line.ts';
import { printKitLine, printSlot } from './print-facts.ts';
import { printItems, printMoveLine } from './print-letter.ts';

type ChangedFact = keyof PlanFacts;

/** One thing that differs between two versions; texts are in the shorthand. */
export type Change =
  | { readonly kind: 'fact'; readonly fact: ChangedFact; readonly before?: string; readonly after?: string }
  | { readonly kind: 'block'; readonly line: LineId; readonly before: string; readonly after: string }
  | {
      readonly kind: 'block-added';
      readonly line: LineId;
      readonly text: string;
      readonly letters: readonly LetterText[];
    }
  | {
      readonly kind: 'block-dropped';
      readonly line: LineId;
      readonly text: string;
      readonly letters: readonly LetterText[];
    }
  | {
      readonly kind: 'items';
      readonly line: LineId;
      readonly block: string;
      readonly before: string;
      readonly after: string;
    }
  | {
      readonly kind: 'letter';
      readonly line: LineId;
      readonly label: string;
      readonly before: string;
      readonly after: string;
    }
  | {
      readonly kind: 'letter-added' | 'letter-dropped';
      readonly line: LineId;
      readonly label: string;
      readonly text: string;
    }
  | {
      readonly kind: 'letters-moved';
      readonly letters: readonly { readonly from: string; readonly to: string }[];
    }
  | { readonly kind: 'side-dropped' | 'side-assumed'; readonly label: string; readonly sides: SideUse };

type LetterText = { readonly label: string; readonly text: string };

/** What changed from one version of a plan to the next, by line id: facts, blocks, letters, then moved labels. */
export function changesBetween(before: Plan, after: Plan, catalogue: Catalogue): readonly Change[] {
  return [
    ...factChanges(before.facts, after.facts),
    ...blockChanges(before, after, catalogue),
    ...letterChanges(before, after, catalogue),
    ...movedLetters(before, after),
  ];
}

const factOrder: readonly ChangedFact[] = [
  'title',
  'slotSeconds',
  'level',
  'people',
  'focus',
  'aim',
  'beginners',
  'olderAdults',
  'hotRoom',
  'startsAt',
  'room',
  'kit',
];

function factChanges(before: PlanFacts, after: PlanFacts): readonly Change[] {
  return factOrder.flatMap((fact) => {
    const [was, now] = [printFact(before, fact), printFact(after, fact)];
    if (was === now) return [];
    return [
      {
        kind: 'fact',
        fact,
        ...(was !== undefined && { before: was }),
        ...(now !== undefined && { after: now }),
      },
    ];
  });
}

function printFact(facts: PlanFacts, fact: ChangedFact): string | undefined {
  switch (fact) {
    case 'slotSeconds':
      return printSlot(facts.slotSeconds);
    case 'beginners':
    case 'olderAdults':
    case 'hotRoom':
      return facts[fact] ? 'yes' : undefined;
    case 'startsAt':
      return facts.startsAt && `${printDay(facts.startsAt.date)} ${facts.startsAt.time}`;
    case 'kit':
      return facts.kit && printKitLine(facts.kit).replace('kit: ', '');
    default: {
      const value = facts[fact];
      return value === undefined ? undefined : String(value);
    }
  }
}

function blockChanges(before: Plan, after: Plan, catalogue: Catalogue): readonly Change[] {
  const [old, fresh] = [byId(before.blocks), byId(after.blocks)];
  const dropped = before.blocks
    .filter(({ id }) => !fresh.has(id))
    .map((block): Change => wholeBlock('block-dropped', block, before, catalogue));
  const others = after.blocks.flatMap((block): readonly Change[] => {
    const was = old.get(block.id);
    if (was === undefined) return [wholeBlock('block-added', block, after, catalogue)];
    return [...lineChange(was, block), ...itemChange(was, block, catalogue)];
  });
  return [...dropped, ...others];
}

function byId(blocks: readonly Block[]): ReadonlyMap<LineId, Block> {
  return new Map(blocks.map((block) => [block.id, block]));
}

function lineChange(was: Block, now: Block): readonly Change[] {
  const [before, after] = [printBlockLine(was), printBlockLine(now)];
  return before === after ? [] : [{ kind: 'block', line: now.id, before, after }];
}

function itemChange(was: Block, now: Block, catalogue: Catalogue): readonly Change[] {
  if (!isOpenBlock(was) || !isOpenBlock(now)) return [];
  const print = (block: typeof was) => [printItems(block.items, catalogue), ...block.say].join(' · ');
  const [before, after] = [print(was), print(now)];
  return before === after ? [] : [{ kind: 'items', line: now.id, block: printBlockLine(now), before, after }];
}

function wholeBlock(
  kind: 'block-added' | 'block-dropped',
  block: Block,
  plan: Plan,
  catalogue: Catalogue,
): Change {
  const letters = labelledLetters(plan)
    .filter((each) => each.block === block)
    .map(({ label, letter }) => ({ label, text: printMoveLine(letter, catalogue) }));
  return { kind, line: block.id, text: printBlockLine(block), letters };
}

function letterChanges(before: Plan, after: Plan, catalogue: Catalogue): readonly Change[] {
  const [old, fresh] = [lettersById(before), lettersById(after)];
  const [oldBlocks, freshBlocks] = [byId(before.blocks), byId(after.blocks)];
  const print = ({ letter }: LabelledLetter) => [printMoveLine(letter, catalogue), ...letter.say].join(' · ');
  const dropped = [...old.values()]
    .filter(({ letter, block }) => !fresh.has(letter.id) && freshBlocks.has(block.id))
    .map(
      (each): Change => ({
        kind: 'letter-dropped',
        line: each.letter.id,
        label: each.label,
        text: print(each),
      }),
    );
  const others = [...fresh.values()].flatMap((each): readonly Change[] => {
    const was = old.get(each.letter.id);
    const { label } = each;
    const line = each.letter.id;
    if (was === undefined) {
      return oldBlocks.has(each.block.id) ? [{ kind: 'letter-added', line, label, text: print(each) }] : [];
    }
    const [text, now] = [print(was), print(each)];
    return text === now ? [] : [{ kind: 'letter', line, label, before: text, after: now }];
  });
  return [...dropped, ...others];
}

function lettersById(plan: Plan): ReadonlyMap<LineId, LabelledLetter> {
  return new Map(labelledLetters(plan).map((each) => [each.letter.id, each]));
}

/** Letters that go by another label now. */
function movedLetters(before: Plan, after: Plan): readonly Change[] {
  const old = lettersById(before);
  const letters = [...lettersById(after).values()].flatMap(({ label, letter }) => {
    const from = old.get(letter.id)?.label;
    return from === undefined || from === label ? [] : [{ from, to: label }];
  });
  return letters.length === 0 ? [] : [{ kind: 'letters-moved', letters }];
}
