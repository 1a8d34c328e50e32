import { energyRows } from '../catalogue/energy-rows.ts';
import type { EnergyRow } from '../catalogue/move.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import type { Block, Plan } from '../plan/plan.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { Timeline } from '../timing/timeline.ts';
import type { TimingContext } from '../timing/timing-context.ts';
import type { EnergyEstimate } from './load.ts';

/** Adults under 60, the range of body weights told. Common practice, no published source. */
const lightKg = 55;
const heavyKg = 95;

/** Kilocalories: MET × 3.5 × kg ÷ 200 a minute, the ACSM convention as the ACE publishes it. */
export function kilocalories(met: number, bodyKg: number, seconds: number): number {
  return ((met * 3.5 * bodyKg) / 200) * (seconds / 60);
}

/** One Compendium row a block over the block's whole length, since those rows contain their rests. */
export function energyOfClass(plan: Plan, timeline: Timeline, context: TimingContext): EnergyEstimate {
  const rows = plan.blocks.flatMap((block, index) => {
    const row = mostDemanding(block, context);
    const time = timeline.blocks[index];
    if (row === undefined || time === undefined) return [];
    return [{ block: index, ...row, seconds: time.endSeconds - time.startSeconds }];
  });
  const kcalAt = (kg: number) =>
    rows.reduce((sum, { met, seconds }) => sum + kilocalories(met, kg, seconds), 0);
  return { lightKg, heavyKg, lightKcal: kcalAt(lightKg), heavyKcal: kcalAt(heavyKg), rows };
}

/** The row of the block's kind or of its most demanding move, whichever is higher; lines of time have none. */
function mostDemanding(block: Block, context: TimingContext): EnergyRow | undefined {
  const ofMoves = hasLetters(block)
    ? block.letters.flatMap((letter) => letter.moves.map((planned) => knownMove(planned, context)?.energy))
    : [];
  return [rowOfKind(block), ...ofMoves]
    .filter((row) => row !== undefined)
    .reduce((most: EnergyRow | undefined, row) => (row.met > (most?.met ?? 0) ? row : most), undefined);
}

function rowOfKind(block: Block): EnergyRow | undefined {
  switch (block.kind) {
    case 'tabata':
      return energyRows['intervals, vigorous'];
    case 'amrap':
    case 'for time':
      return energyRows['intervals, moderate'];
    case 'warm-up':
    case 'song':
      return energyRows['calisthenics, moderate'];
    case 'mobility':
    case 'cool-down':
      return energyRows['stretching, mild'];
    case 'circuit':
    case 'straight':
    case 'stations':
    case 'finisher':
    case 'emom':
    case 'ladder':
    case 'rest':
    case 'water':
    case 'explain':
    case 'set-up':
    case 'clear-up':
      return undefined;
  }
}
