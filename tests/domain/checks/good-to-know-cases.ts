import { bandsToCheck } from '../../../domain/checks/bands-to-check.ts';
import { mainLiftsAgainstWish } from '../../../domain/checks/main-lifts-against-wish.ts';
import { muscleTrainedLately } from '../../../domain/checks/muscle-trained-lately.ts';
import { noTimeToWipe } from '../../../domain/checks/no-time-to-wipe.ts';
import { weightsUnderfoot } from '../../../domain/checks/weights-underfoot.ts';
import { type CheckCase, half } from './check-cases.ts';
import { contextWith } from './subject-of.ts';

const practice = 'common practice';
const legDay = half('level 2', 'straight x4, 40/50', 'goblet squat', 'dumbbell squat', 'dead bug');
const neighbour = (quadriceps: number) => ({
  neighbours: [{ title: 'Legs', instant: '2026-03-03T17:00:00Z', setsByMuscle: { quadriceps } }],
});
const lastTime = (...ids: readonly string[]) => ({ lastTime: { moveIds: new Set(ids) } });
const varying = { settings: { ...contextWith().settings, mainLifts: 'vary' as const } };

export const goodToKnowCases: readonly CheckCase[] = [
  {
    check: muscleTrainedLately,
    bad: legDay,
    facts: neighbour(6),
    // Garber CE et al., Med Sci Sports Exerc 2011;43:1334–59: 48 hours between.
    finding: {
      code: 'muscle-trained-lately',
      severity: 'good to know',
      lines: [],
      source: { published: 'Garber 2011' },
      muscles: ['quadriceps'],
      title: 'Legs',
      instant: '2026-03-03T17:00:00Z',
    },
    near: [legDay],
    nearFacts: neighbour(5.5),
  },
  {
    check: mainLiftsAgainstWish,
    bad: legDay,
    facts: lastTime('romanian-deadlift', 'bent-over-row', 'plank'),
    finding: {
      code: 'main-lifts-against-wish',
      severity: 'good to know',
      lines: [],
      source: practice,
      wish: 'keep',
      moveIds: ['romanian-deadlift', 'bent-over-row'],
    },
    near: [legDay],
    nearFacts: lastTime('romanian-deadlift', 'goblet-squat'),
  },
  {
    check: mainLiftsAgainstWish,
    bad: legDay,
    facts: { ...varying, ...lastTime('goblet-squat', 'dumbbell-squat') },
    finding: {
      code: 'main-lifts-against-wish',
      severity: 'good to know',
      lines: ['A', 'B'],
      source: practice,
      wish: 'vary',
      moveIds: ['goblet-squat', 'dumbbell-squat'],
    },
    near: [legDay],
    nearFacts: { ...varying, ...lastTime('goblet-squat', 'romanian-deadlift') },
  },
  {
    check: noTimeToWipe,
    bad: half('level 2', 'stations x2, 45/10', 'goblet squat', 'push-up', 'dead bug'),
    finding: {
      code: 'no-time-to-wipe',
      severity: 'good to know',
      lines: ['A'],
      source: practice,
      restSeconds: 10,
      wipeSeconds: 15,
      mend: 'block A 45/15',
    },
    near: [
      half('level 2', 'stations x2, 45/15', 'goblet squat', 'push-up', 'dead bug'),
      half('level 2', 'circuit x2, 45/10', 'goblet squat', 'push-up', 'dead bug'),
    ],
  },
  {
    check: weightsUnderfoot,
    bad: half('level 2', 'amrap 8', '10 goblet squat', '10 burpee'),
    finding: { code: 'weights-underfoot', severity: 'good to know', lines: ['A', 'B'], source: practice },
    near: [
      half('level 2', 'circuit x3, 40/20', 'goblet squat', 'burpee'),
      half('level 2', 'amrap 8', '10 goblet squat', '10 push-up'),
    ],
  },
  {
    check: bandsToCheck,
    bad: half('level 2', 'circuit x3, 40/20', 'standing band row', 'push-up', 'dead bug'),
    finding: { code: 'bands-to-check', severity: 'good to know', lines: ['A'], source: practice },
    near: [half('level 2', 'circuit x3, 40/20', 'bent-over row', 'push-up', 'dead bug')],
  },
  {
    check: bandsToCheck,
    bad: half('level 2', 'kit: long bands', 'circuit x3, 40/20', 'upright row', 'dead bug'),
    finding: { code: 'bands-to-check', severity: 'good to know', lines: ['A'], source: practice },
    near: [half('level 2', 'kit: dumbbells', 'circuit x3, 40/20', 'upright row', 'dead bug')],
  },
  {
    check: weightsUnderfoot,
    bad: half('level 2', 'amrap 8', '10 upright row', '10 mountain climber'),
    finding: { code: 'weights-underfoot', severity: 'good to know', lines: ['A', 'B'], source: practice },
    near: [half('level 2', 'kit: long bands, mats', 'amrap 8', '10 upright row', '10 mountain climber')],
  },
];
