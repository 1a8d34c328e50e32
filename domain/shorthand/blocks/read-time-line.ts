import type { TimeBlock } from '../../plan/plan.ts';
import { limits } from '../limits.ts';
import { type BlockReading, clauseOf, nameOf, onlyThese, tell, within, wordSpan } from './block-reading.ts';
import { clausesOf } from './clauses.ts';

/** A line of time, or the rest between rounds of the block above (`rest 60 each round`). */
export type TimeLine =
  | { readonly kind: 'time'; readonly block: TimeBlock }
  | { readonly kind: 'each round'; readonly seconds: number };

/** `rest 60`, `water 1:30`, `explain 60`, `rest 60, explain`, `rest 60 each round`. */
export function readTimeLine(reading: BlockReading, kind: TimeBlock['kind']): TimeLine | undefined {
  const clauses = clausesOf(reading.tokens, reading.at, 'seconds');
  const holds = kind === 'rest' || kind === 'water';
  const eachRound = kind === 'rest' ? clauseOf(clauses, 'between rounds') : undefined;
  const allowed = holds ? (['length', 'name', 'explain'] as const) : (['length', 'name'] as const);
  onlyThese(reading, clauses, eachRound ? ['between rounds'] : allowed, `${kind} 60`);
  const length = eachRound ?? clauseOf(clauses, 'length');
  if (length === undefined) {
    return tell(reading, wordSpan(reading), { code: 'number-needed', block: kind, works: `${kind} 60` });
  }
  if (length.bare && length.seconds > 0 && length.seconds < 5) {
    const works = [`${kind} ${length.seconds}s`, `${kind} ${length.seconds} min`];
    return tell(reading, length.span, { code: 'unit-needed', works });
  }
  within(reading, length.span, 'rest', length.seconds, limits.restSeconds);
  if (eachRound !== undefined) return { kind: 'each round', seconds: eachRound.seconds };
  const block: TimeBlock = {
    kind,
    id: '',
    span: reading.span,
    ...nameOf(reading, clauses),
    seconds: length.seconds,
    explain: clauseOf(clauses, 'explain') !== undefined,
  };
  return { kind: 'time', block };
}
