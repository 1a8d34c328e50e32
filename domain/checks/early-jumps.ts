import type { Move } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { labelOf, mendWith, swapForOneLike } from './mends.ts';
import { moveById } from './move-facts.ts';
import { linesOfTurns, turnsOf } from './turns-of.ts';

export type EarlyJumps = FindingBase & {
  readonly code: 'early-jumps';
  readonly freeSeconds: number;
};

/** Jumps in the first minutes of work. Jacks, skips and runs are a warm-up's own and don't count. */
export function earlyJumps(subject: CheckSubject, context: Context): readonly EarlyJumps[] {
  const { jumpsFreeSeconds } = context.settings.checks;
  const turns = turnsOf(subject, context);
  const early = turns.filter((turn, index) => {
    const workBefore = turns.slice(0, index).reduce((sum, { workSeconds }) => sum + workSeconds, 0);
    return turn.move !== undefined && isJump(turn.move) && workBefore < jumpsFreeSeconds;
  });
  const lines = linesOfTurns(early);
  const move = early[0]?.move;
  const line = lines[0];
  if (move === undefined || line === undefined) {
    return [];
  }
  return [
    {
      code: 'early-jumps',
      severity: 'look at',
      lines,
      source: 'common practice',
      freeSeconds: jumpsFreeSeconds,
      ...mendWith(lines.length === 1 ? lowImpact(move, line, subject, context) : undefined),
    },
  ];
}

function lowImpact(move: Move, line: string, subject: CheckSubject, context: Context): string | undefined {
  const easier = move.easier === undefined ? undefined : moveById(move.easier, context);
  return easier !== undefined && !easier.traits.includes('impact')
    ? `easier ${labelOf(subject.plan, line)}`
    : swapForOneLike(move, line, subject, context, ({ traits }) => !traits.includes('impact'));
}

function isJump({ pattern, effort, traits }: Move): boolean {
  return traits.includes('impact') && (pattern === 'jump' || effort === 'reps') && effort !== 'conditioning';
}
