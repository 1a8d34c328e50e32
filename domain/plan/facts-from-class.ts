import type { ScheduledClass } from '../calendar/scheduled-class.ts';
import type { PlanFacts } from './plan.ts';

/** What a title line leaves out, as the timetable has it for the class of that moment. */
export type FactsFromClass = Partial<Pick<PlanFacts, 'room' | 'people' | 'slotSeconds'>>;

/** `slotAssumed`: the line gives no length, so that the one in `facts` is the studio's default. */
export function factsFromClass(
  facts: PlanFacts,
  { room, people, slotSeconds }: Pick<ScheduledClass, 'room' | 'people' | 'slotSeconds'>,
  slotAssumed: boolean,
): FactsFromClass {
  return {
    ...(facts.room === undefined && room !== undefined ? { room } : {}),
    ...(facts.people === undefined && people !== undefined ? { people } : {}),
    ...(slotAssumed && slotSeconds !== facts.slotSeconds ? { slotSeconds } : {}),
  };
}
