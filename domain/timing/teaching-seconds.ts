import type { Plan } from '../plan/plan.ts';
import type { Settings } from '../settings.ts';

/** The slot less the room's door and clear-up time: what the plan must fit, in seconds. */
export function teachingSeconds(plan: Plan, settings: Settings): number {
  const room = settings.rooms.find(({ name }) => name === plan.facts.room);
  return plan.facts.slotSeconds - (room?.doorSeconds ?? 0) - (room?.clearUpSeconds ?? 0);
}
