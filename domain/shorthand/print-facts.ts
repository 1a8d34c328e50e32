import { printDay } from '../calendar/days-meant.ts';
import type { PlanFacts } from '../plan/plan.ts';
import { kitName } from './kit-words.ts';

/** The first line: title, slot, level, people and the rest, in one order. */
export function printTitleLine(facts: PlanFacts): string {
  const { title, level, people, focus, aim, startsAt, room } = facts;
  return [
    title,
    printSlot(facts.slotSeconds),
    level === undefined ? undefined : level === 'mixed' ? 'mixed' : `level ${level}`,
    people === undefined ? undefined : people === 1 ? '1 person' : `${people} people`,
    focus === undefined ? undefined : `focus ${focus}`,
    aim === undefined ? undefined : `aim ${aim}`,
    facts.beginners ? 'beginners' : undefined,
    facts.olderAdults ? 'older adults' : undefined,
    facts.hotRoom ? 'hot room' : undefined,
    startsAt === undefined ? undefined : `${printDay(startsAt.date)} ${startsAt.time}`,
    room,
  ]
    .filter((words) => words !== undefined)
    .join(', ');
}

export function printSlot(slotSeconds: number): string {
  return `${slotSeconds / 60} min`;
}

export function printKitLine(kit: NonNullable<PlanFacts['kit']>): string {
  return `kit: ${kit.length === 0 ? 'none' : kit.map(kitName).join(', ')}`;
}
