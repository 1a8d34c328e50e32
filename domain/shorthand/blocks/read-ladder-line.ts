import type { LadderBlock } from '../../plan/plan.ts';
import { limits } from '../limits.ts';
import { sign } from '../matches.ts';
import { type BlockReading, clauseOf, onlyThese, tell, within, wordSpan } from './block-reading.ts';
import { clausesOf, spanOf } from './clauses.ts';
import { secondsSaid, sharedFacts } from './read-timed-lines.ts';
import { rungsAt } from './rungs-at.ts';

/** `ladder 10 to 1`, `2 to 10 step 2`, `1 to 10 to 1`, `21 15 9`, each with `in 6:00` where given. */
export function readLadderLine(reading: BlockReading): LadderBlock | undefined {
  const from = [',', ':'].reduce((at, text) => sign(reading.tokens, at, text)?.next ?? at, reading.at);
  const rungs = rungsAt(reading.tokens, from);
  if (rungs === undefined) {
    return tell(reading, wordSpan(reading), {
      code: 'number-needed',
      block: 'ladder',
      works: 'ladder 10 to 1',
    });
  }
  const clauses = clausesOf(reading.tokens, rungs.next, 'seconds');
  onlyThese(
    reading,
    clauses,
    ['name', 'march in the rests', 'in pairs', 'burnout', 'count-in', 'in'],
    'ladder 10 to 1, in 6:00',
  );
  const span = spanOf(reading.tokens, from, rungs.next);
  within(reading, span, 'rungs', rungs.value.length, limits.rounds);
  for (const reps of [Math.min(...rungs.value), Math.max(...rungs.value)]) {
    within(reading, span, 'reps', reps, limits.reps);
  }
  const cap = clauseOf(clauses, 'in');
  const capSeconds = cap && secondsSaid(reading, cap);
  if (cap !== undefined) within(reading, cap.span, 'length', capSeconds ?? 0, limits.lengthSeconds);
  return {
    kind: 'ladder',
    ...sharedFacts(reading, clauses),
    rungs: rungs.value,
    ...(capSeconds === undefined ? {} : { capSeconds }),
  };
}
