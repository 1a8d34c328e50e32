import type { Segment } from './timeline.ts';

/** A segment that does not know yet when it starts, nor which block it stands in. */
export type Part = Omit<Segment, 'startSeconds' | 'endSeconds' | 'block'> & {
  readonly seconds: number;
  /** Rest that belongs to an EMOM interval, or in which the partner works: never dropped or replaced. */
  readonly belongsTo?: 'interval' | 'partner';
};

/** Seconds of a run of parts. */
export function secondsOf(parts: readonly Part[]): number {
  return parts.reduce((sum, part) => sum + part.seconds, 0);
}

/** Seconds of work in a run of parts, both sides included. */
export function workSecondsIn(parts: readonly Part[]): number {
  return parts.reduce((sum, { kind, seconds }) => (kind === 'work' ? sum + seconds : sum), 0);
}

/** Rest of any kind. */
export function isRest({ kind }: Part): boolean {
  return kind === 'rest' || kind === 'between-rounds' || kind === 'between-blocks';
}

/** A rest of some seconds, or nothing. */
export function restPart(seconds: number, facts: Omit<Part, 'kind' | 'seconds'> = {}): readonly Part[] {
  return seconds > 0 ? [{ ...facts, kind: 'rest', seconds }] : [];
}
