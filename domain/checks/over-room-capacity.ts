import type { Context } from '../context.ts';
import { roomOf } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';

export type OverRoomCapacity = FindingBase & {
  readonly code: 'over-room-capacity';
  readonly people: number;
  readonly capacity: number;
};

/** More people than the capacity posted for the room by local rules. */
export function overRoomCapacity({ plan }: CheckSubject, context: Context): readonly OverRoomCapacity[] {
  const capacity = roomOf(plan, context)?.capacity;
  const { people } = plan.facts;
  if (capacity === undefined || people === undefined || people <= capacity) {
    return [];
  }
  return [
    {
      code: 'over-room-capacity',
      severity: 'must fix',
      lines: [],
      source: 'common practice',
      people,
      capacity,
    },
  ];
}
