import type { Catalogue } from '../../../domain/catalogue/catalogue.ts';
import type { PlanFacts } from '../../../domain/plan/plan.ts';
import type { PlanChange } from '../../../domain/plan/plan-difference.ts';
import { printSlot } from '../../../domain/shorthand/print-facts.ts';
import { printItems } from '../../../domain/shorthand/print-letter.ts';
import { printBlockLine, printMoveLine } from '../../../domain/shorthand/print-plan.ts';
import { levelText, peopleText } from './card-words.ts';

/** One way in which two versions differ, in a line. */
export function differenceText(change: PlanChange, catalogue: Catalogue): string {
  switch (change.kind) {
    case 'fact changed':
      return `${factName(change.fact)}: ${factText(change.fact, change.before)} → ${factText(change.fact, change.after)}`;
    case 'block added':
      return `added: ${printBlockLine(change.block)}`;
    case 'block dropped':
      return `dropped: ${printBlockLine(change.block)}`;
    case 'block changed':
      return blockChange(change, catalogue);
    case 'letter added':
      return `${change.label} added: ${printMoveLine(change.letter, catalogue)}`;
    case 'letter dropped':
      return `${change.label} dropped: ${printMoveLine(change.letter, catalogue)}`;
    case 'letter changed':
      return `${change.label}: ${printMoveLine(change.before, catalogue)} → ${printMoveLine(change.after, catalogue)}`;
    case 'letter moved':
      return `${change.from} is now ${change.to}: ${printMoveLine(change.letter, catalogue)}`;
  }
}

function blockChange(
  { before, after }: Extract<PlanChange, { kind: 'block changed' }>,
  catalogue: Catalogue,
): string {
  const [was, now] = [printBlockLine(before), printBlockLine(after)];
  if (was !== now || !('items' in before) || !('items' in after)) return `${was} → ${now}`;
  return `${now}: ${printItems(before.items, catalogue)} → ${printItems(after.items, catalogue)}`;
}

function factName(fact: keyof PlanFacts): string {
  switch (fact) {
    case 'slotSeconds':
      return 'slot';
    case 'olderAdults':
      return 'older adults';
    case 'hotRoom':
      return 'hot room';
    case 'startsAt':
      return 'day and time';
    default:
      return fact;
  }
}

function factText(fact: keyof PlanFacts, facts: PlanFacts): string {
  switch (fact) {
    case 'slotSeconds':
      return printSlot(facts.slotSeconds);
    case 'level':
      return facts.level === undefined ? 'none' : levelText(facts.level);
    case 'people':
      return facts.people === undefined ? 'none' : peopleText(facts.people);
    case 'startsAt':
      return facts.startsAt === undefined ? 'none' : `${facts.startsAt.date} ${facts.startsAt.time}`;
    case 'kit':
      return facts.kit === undefined ? 'the room’s' : facts.kit.length === 0 ? 'none' : facts.kit.join(', ');
    case 'beginners':
    case 'olderAdults':
    case 'hotRoom':
      return facts[fact] ? 'yes' : 'no';
    case 'title':
    case 'focus':
    case 'aim':
    case 'room':
      return facts[fact] ?? 'none';
  }
}
