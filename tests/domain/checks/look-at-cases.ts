import { expect } from 'vitest';
import { aboveLevel } from '../../../domain/checks/above-level.ts';
import { allOutTooLong } from '../../../domain/checks/all-out-too-long.ts';
import { earlyJumps } from '../../../domain/checks/early-jumps.ts';
import { floorCrowded } from '../../../domain/checks/floor-crowded.ts';
import { frontToBackFlips } from '../../../domain/checks/front-to-back-flips.ts';
import { headDownThenUp } from '../../../domain/checks/head-down-then-up.ts';
import { lateStarts } from '../../../domain/checks/late-starts.ts';
import { loadedWithoutBreak } from '../../../domain/checks/loaded-without-break.ts';
import { longOnTheBack } from '../../../domain/checks/long-on-the-back.ts';
import { manyNewMoves } from '../../../domain/checks/many-new-moves.ts';
import { manyUpsAndDowns } from '../../../domain/checks/many-ups-and-downs.ts';
import { newMoveNotExplained } from '../../../domain/checks/new-move-not-explained.ts';
import { newMoveOutOfSight } from '../../../domain/checks/new-move-out-of-sight.ts';
import { noBreakBetweenBlocks } from '../../../domain/checks/no-break-between-blocks.ts';
import { noCoolDown } from '../../../domain/checks/no-cool-down.ts';
import { noWarmUp } from '../../../domain/checks/no-warm-up.ts';
import { outOfStepThrow } from '../../../domain/checks/out-of-step-throw.ts';
import { pushPullUneven } from '../../../domain/checks/push-pull-uneven.ts';
import { samePartThreeInARow } from '../../../domain/checks/same-part-three-in-a-row.ts';
import { samePrimeMover } from '../../../domain/checks/same-prime-mover.ts';
import { shortCoolDown } from '../../../domain/checks/short-cool-down.ts';
import { shortRestForHeavyWork } from '../../../domain/checks/short-rest-for-heavy-work.ts';
import { shortWarmUp } from '../../../domain/checks/short-warm-up.ts';
import { stationLengthsUnequal } from '../../../domain/checks/station-lengths-unequal.ts';
import { timeUnused } from '../../../domain/checks/time-unused.ts';
import { twoTechnicalStations } from '../../../domain/checks/two-technical-stations.ts';
import { twoWeightsFromOnePair } from '../../../domain/checks/two-weights-from-one-pair.ts';
import { warmUpMissesPatterns } from '../../../domain/checks/warm-up-misses-patterns.ts';
import { type CheckCase, fixed, half, taughtAllBut } from './check-cases.ts';
import { contextWith } from './subject-of.ts';

const practice = 'common practice';
const published = (name: string) => ({ published: name });
const taught = (...ids: readonly string[]) => ({ movesTaught: taughtAllBut(contextWith(), ...ids) });

const easyCircuit = ['circuit x3, 40/20', 'goblet squat', 'bent-over row', 'dead bug', 'march'] as const;

export const lookAtCases: readonly CheckCase[] = [
  {
    check: outOfStepThrow,
    bad: half('level 2', 'amrap 8', '10 kettlebell swing', '10 sit-up', '10 goblet squat'),
    finding: {
      code: 'out-of-step-throw',
      severity: 'look at',
      lines: ['A', 'B'],
      source: practice,
      throwing: 'A',
      mend: expect.stringMatching(/^swap B /),
    },
    near: [
      half('level 2', 'amrap 8', '10 kettlebell swing', '10 goblet squat', '10 squat to press'),
      half('level 2', 'circuit x3, 40/20', 'kettlebell swing', 'sit-up', 'goblet squat'),
    ],
  },
  {
    check: noWarmUp,
    bad: ['No start, 30 min, level 2', ...easyCircuit, 'cool-down to the end'].join('\n'),
    finding: {
      code: 'no-warm-up',
      severity: 'look at',
      lines: [],
      source: published('ACSM'),
      leastSeconds: 300,
      mend: 'warm-up 5:00',
    },
    near: [
      half('level 2', ...easyCircuit),
      ['Song first, 30 min, level 2', 'song 5:20', ...easyCircuit, 'cool-down to the end'].join('\n'),
    ],
  },
  {
    check: shortWarmUp,
    bad: ['Short start, 30 min, level 2', 'warm-up 3:00', ...easyCircuit, 'cool-down to the end'].join('\n'),
    finding: {
      code: 'short-warm-up',
      severity: 'look at',
      source: published('ACSM'),
      seconds: 180,
      leastSeconds: 300,
      mend: 'warm-up 5:00',
      lines: [expect.any(String)],
    },
    near: [
      half('level 2', ...easyCircuit),
      [
        'Two parts, 30 min, level 2',
        'mobility 2:00',
        'warm-up 3:00',
        ...easyCircuit,
        'cool-down to the end',
      ].join('\n'),
    ],
  },
  {
    check: noCoolDown,
    bad: ['No end, 30 min, level 2', 'warm-up 5:00', ...easyCircuit].join('\n'),
    finding: {
      code: 'no-cool-down',
      severity: 'look at',
      lines: [],
      source: published('ACSM'),
      leastSeconds: 300,
      mend: 'cool-down 5:00',
    },
    near: [
      half('level 2', ...easyCircuit),
      ['Ends in mobility, 30 min, level 2', 'warm-up 5:00', ...easyCircuit, 'mobility 6:00'].join('\n'),
    ],
  },
  {
    check: shortCoolDown,
    bad: ['Short end, 30 min, level 2', 'warm-up 5:00', ...easyCircuit, 'cool-down 2:30'].join('\n'),
    finding: {
      code: 'short-cool-down',
      severity: 'look at',
      source: published('ACSM'),
      seconds: 150,
      leastSeconds: 300,
      mend: 'cool-down 5:00',
      lines: [expect.any(String)],
    },
    near: [half('level 2', ...easyCircuit)],
  },
  {
    check: earlyJumps,
    bad: half('level 2', 'circuit x3, 40/20', 'squat jump', 'push-up', 'dead bug'),
    finding: {
      code: 'early-jumps',
      severity: 'look at',
      lines: ['A'],
      source: practice,
      freeSeconds: 240,
      mend: expect.stringMatching(/^(easier A|swap A .+)$/),
    },
    near: [
      half(
        'level 2',
        'circuit x2, 40/20',
        'goblet squat',
        'push-up',
        'dead bug',
        'rest 60',
        'amrap 4',
        '10 squat jump',
        '10 push-up',
      ),
      half('level 2', 'circuit x3, 40/20', 'jumping jack', 'push-up', 'dead bug'),
    ],
  },
  {
    check: warmUpMissesPatterns,
    bad: [
      'Wrong start, 30 min, level 2',
      'warm-up 5:00: push-up, plank',
      'circuit x3, 40/20',
      'goblet squat',
      'Romanian deadlift',
      'cool-down to the end',
    ].join('\n'),
    finding: {
      code: 'warm-up-misses-patterns',
      severity: 'look at',
      source: practice,
      lines: [expect.any(String)],
    },
    near: [
      [
        'Right start, 30 min, level 2',
        'warm-up 5:00: bodyweight squat, plank',
        'circuit x3, 40/20',
        'goblet squat',
        'Romanian deadlift',
        'cool-down to the end',
      ].join('\n'),
      half('level 2', 'circuit x3, 40/20', 'goblet squat', 'Romanian deadlift'),
    ],
  },
  {
    check: timeUnused,
    bad: fixed(40, 'level 2', ...easyCircuit),
    finding: {
      code: 'time-unused',
      severity: 'look at',
      lines: [],
      source: practice,
      unusedSeconds: 1080,
      teachingSeconds: 2400,
      mend: expect.any(String),
    },
    near: [fixed(23, 'level 2', ...easyCircuit)],
  },
  {
    check: timeUnused,
    bad: half('level 2', 'circuit x3, 40/20', 'push-up', 'dead bug', 'goblet squat'),
    finding: {
      code: 'time-unused',
      severity: 'look at',
      lines: [],
      source: practice,
      // 30:00 less 5:00, 9:00 and the 10:00 of a long cool-down.
      unusedSeconds: 360,
      teachingSeconds: 1800,
      mend: 'rounds A x4\nwarm-up 8:00',
    },
    near: [half('level 2', 'circuit x5, 40/20', 'push-up', 'dead bug', 'goblet squat')],
  },
  {
    check: noBreakBetweenBlocks,
    bad: half('level 2', 'amrap 5', '10 push-up', '10 dead bug', ...easyCircuit),
    finding: {
      code: 'no-break-between-blocks',
      severity: 'look at',
      lines: ['B'],
      source: practice,
      mend: 'rest after B 60',
    },
    near: [
      half('level 2', 'amrap 5', '10 push-up', '10 dead bug', 'rest 60', ...easyCircuit),
      half('level 2', ...easyCircuit, 'amrap 5', '10 push-up', '10 dead bug'),
    ],
  },
  {
    check: lateStarts,
    bad: half('level 2', 'circuit x3, 20/0', 'kettlebell deadlift', 'dead bug', 'march'),
    finding: {
      code: 'late-starts',
      severity: 'look at',
      source: practice,
      lines: ['B'],
      letter: 'B',
      lateSecondsABout: expect.any(Number),
      boutSeconds: 20,
      mend: expect.stringMatching(/^rest A \d+$/),
    },
    near: [half('level 2', 'circuit x3, 40/20', 'kettlebell deadlift', 'dead bug', 'march')],
  },
  {
    check: lateStarts,
    bad: half('level 2', 'circuit x5, 18/10, between rounds 0', 'kettlebell deadlift', 'dead bug'),
    finding: {
      code: 'late-starts',
      severity: 'look at',
      source: practice,
      lines: ['A'],
      letter: 'A',
      lateSecondsABout: expect.any(Number),
      boutSeconds: 18,
      mend: 'between rounds A 8',
    },
    near: [half('level 2', 'circuit x5, 18/10, between rounds 10', 'kettlebell deadlift', 'dead bug')],
  },
  {
    check: lateStarts,
    bad: half('level 2', 'circuit x3, 20/0', 'kettlebell deadlift', 'dead bug', 'goblet squat', 'superman'),
    finding: {
      code: 'late-starts',
      severity: 'look at',
      source: practice,
      lines: ['C', 'B', 'D'],
      letter: 'C',
      lateSecondsABout: expect.any(Number),
      boutSeconds: 20,
      mend: 'block A 20/10',
    },
    near: [
      half('level 2', 'circuit x3, 20/10', 'kettlebell deadlift', 'dead bug', 'goblet squat', 'superman'),
    ],
  },
  {
    check: samePrimeMover,
    bad: half('level 2', 'circuit x2, 40/20', 'goblet squat + squat pulse', 'bent-over row', 'push-up'),
    finding: {
      code: 'same-prime-mover',
      severity: 'look at',
      lines: ['A1', 'A2'],
      source: practice,
      first: 'A1',
      second: 'A2',
      muscle: 'quadriceps',
      mend: expect.stringMatching(/^swap A[12] with [BC]$/),
    },
    near: [
      half('level 2', 'circuit x2, 40/20', 'goblet squat + push-up', 'bent-over row'),
      half('level 2', 'circuit x2, 40/20, burnout', 'goblet squat + squat pulse', 'bent-over row', 'push-up'),
      half(
        'level 2, focus legs',
        'circuit x2, 40/20',
        'goblet squat + squat pulse',
        'bent-over row',
        'push-up',
      ),
      half('level 2', 'circuit x2, 40/20', 'dead bug + plank', 'bent-over row', 'push-up'),
      half('level 2', 'straight x3, 40/45', 'goblet squat', 'reverse lunge', 'bent-over row'),
    ],
  },
  {
    check: samePartThreeInARow,
    bad: half(
      'level 2',
      'circuit x2, 40/20',
      'push-up',
      'mountain climber',
      'high plank',
      'goblet squat',
      'bent-over row',
    ),
    finding: {
      code: 'same-part-three-in-a-row',
      severity: 'look at',
      lines: ['A', 'B', 'C'],
      source: practice,
      part: 'wrists',
      mend: expect.stringMatching(/^swap [ABC] with [DE]$/),
    },
    near: [
      half(
        'level 2',
        'circuit x2, 40/20',
        'push-up',
        'goblet squat',
        'high plank',
        'mountain climber',
        'bent-over row',
      ),
      half(
        'level 2, focus shoulders',
        'circuit x2, 40/20',
        'dumbbell shoulder press',
        'curl to press',
        'push press',
        'goblet squat',
      ),
    ],
  },
  {
    check: samePartThreeInARow,
    bad: half(
      'level 1',
      'circuit x2, 45/20',
      "farmer's carry",
      'bent-over row',
      'kettlebell deadlift',
      'push-up',
      'dead bug',
      'march',
    ),
    finding: {
      code: 'same-part-three-in-a-row',
      severity: 'look at',
      lines: ['A', 'B', 'C'],
      source: practice,
      part: 'grip',
      mend: expect.stringMatching(/^swap [ABC] with [DEF]$/),
    },
    near: [
      half(
        'level 1',
        'circuit x2, 30/20',
        "farmer's carry",
        'single-arm row',
        'kettlebell deadlift',
        'push-up',
        'dead bug',
      ),
    ],
  },
  {
    check: manyUpsAndDowns,
    bad: half('level 1', 'circuit x3, 30/10', 'goblet squat', 'dead bug', 'bent-over row', 'glute bridge'),
    finding: {
      code: 'many-ups-and-downs',
      severity: 'look at',
      lines: ['A', 'B', 'C', 'D'],
      source: practice,
      aMinute: 1.4,
      mend: expect.stringMatching(/^swap [ABCD] with [ABCD]$/),
    },
    near: [
      half('level 1', 'circuit x3, 30/10', 'goblet squat', 'bent-over row', 'dead bug', 'glute bridge'),
      half('level 2', 'circuit x3, 30/10', 'goblet squat', 'dead bug', 'bent-over row', 'glute bridge'),
    ],
  },
  {
    check: frontToBackFlips,
    bad: half('level 2', 'circuit x3, 30/10', 'dead bug', 'plank', 'glute bridge', 'superman'),
    finding: {
      code: 'front-to-back-flips',
      severity: 'look at',
      lines: ['A', 'B', 'C', 'D'],
      source: practice,
      flips: 11,
      mend: expect.stringMatching(/^swap [ABCD] with [ABCD]$/),
    },
    near: [
      half('level 2', 'circuit x3, 30/10', 'dead bug', 'glute bridge', 'plank', 'superman'),
      half('level 2', 'circuit x3, 30/10', 'dead bug', 'plank', 'goblet squat'),
    ],
  },
  {
    check: floorCrowded,
    bad: half('level 2, 15 people, Loft', 'circuit x3, 40/20', 'kettlebell swing', 'push-up', 'dead bug'),
    finding: {
      code: 'floor-crowded',
      severity: 'look at',
      lines: ['A'],
      source: practice,
      people: 15,
      areaSquareMetres: 80,
      squareMetresAPerson: 6,
      mend: 'swap A sumo deadlift',
    },
    near: [
      half('level 2, 13 people, Loft', 'circuit x3, 40/20', 'kettlebell swing', 'push-up', 'dead bug'),
      half('level 2, 16 people, Loft', 'circuit x3, 40/20', 'goblet squat', 'push-up', 'dead bug'),
    ],
  },
  {
    check: twoWeightsFromOnePair,
    bad: half(
      'level 2, 12 people, Loft',
      'circuit x3, 30/30',
      'bent-over row heavy + dumbbell shoulder press light + goblet squat medium',
    ),
    finding: {
      code: 'two-weights-from-one-pair',
      severity: 'look at',
      lines: ['A1', 'A2'],
      source: practice,
      first: 'A1',
      second: 'A2',
      item: 'dumbbell',
      mend: 'weight A1 light\nweight A3 light',
    },
    near: [
      half(
        'level 2, 12 people, Loft',
        'circuit x3, 30/30',
        'bent-over row light + dumbbell shoulder press light + goblet squat light',
      ),
    ],
  },
  {
    check: twoWeightsFromOnePair,
    bad: half(
      'level 2, 12 people, Loft',
      'circuit x3, 30/30',
      'bent-over row heavy + dumbbell shoulder press light',
    ),
    finding: {
      code: 'two-weights-from-one-pair',
      severity: 'look at',
      lines: ['A1', 'A2'],
      source: practice,
      first: 'A1',
      second: 'A2',
      item: 'dumbbell',
      mend: 'weight A1 light',
    },
    near: [
      half(
        'level 2, 6 people, Loft',
        'circuit x3, 30/30',
        'bent-over row heavy + dumbbell shoulder press light',
      ),
      half(
        'level 2, 12 people, Loft',
        'circuit x3, 30/30',
        'bent-over row heavy + dumbbell shoulder press heavy',
      ),
      half(
        'level 2, 12 people, Loft',
        'circuit x3, 30/30',
        'bent-over row heavy',
        'dumbbell shoulder press light',
      ),
    ],
  },
  {
    check: aboveLevel,
    bad: half('level 1', 'circuit x3, 40/20', 'push-up', 'bent-over row', 'dead bug'),
    finding: {
      code: 'above-level',
      severity: 'look at',
      lines: ['A'],
      source: practice,
      level: 1,
      options: [{ line: 'A', moveId: 'knee-push-up' }],
      mend: 'easier A',
    },
    near: [
      half('level 1', 'circuit x3, 40/20', 'push-up easier knee push-up', 'bent-over row', 'dead bug'),
      half('level 2', 'circuit x3, 40/20', 'push-up', 'bent-over row', 'dead bug'),
      half('mixed', 'circuit x3, 40/20', 'push-up', 'bent-over row', 'dead bug'),
    ],
  },
  {
    check: allOutTooLong,
    bad: half('beginners', 'amrap 14', '10 bodyweight squat', '10 knee push-up', '10 dead bug'),
    finding: {
      code: 'all-out-too-long',
      severity: 'look at',
      lines: ['A', 'B', 'C'],
      source: published('Rawson 2017'),
      seconds: 840,
      mostSeconds: 720,
      mend: 'block A 12:00',
    },
    near: [
      half('beginners', 'amrap 12', '10 bodyweight squat', '10 knee push-up', '10 dead bug'),
      half('level 2', 'amrap 14', '10 bodyweight squat', '10 knee push-up', '10 dead bug'),
    ],
  },
  {
    check: allOutTooLong,
    bad: half('beginners', 'tabata x4', 'step touch', 'bodyweight squat'),
    finding: {
      code: 'all-out-too-long',
      severity: 'look at',
      lines: ['A', 'B'],
      source: published('Rawson 2017'),
      seconds: 960,
      mostSeconds: 720,
      mend: 'rounds A x3',
    },
    near: [half('beginners', 'tabata x3', 'step touch', 'bodyweight squat')],
  },
  {
    check: loadedWithoutBreak,
    bad: half('level 1', 'amrap 8', '10 goblet squat', '10 bent-over row', '10 dumbbell shoulder press'),
    finding: {
      code: 'loaded-without-break',
      severity: 'look at',
      lines: ['A', 'B', 'C'],
      source: practice,
      seconds: 480,
      mostSeconds: 300,
      mend: 'swap B towel row',
    },
    near: [
      half('level 1', 'amrap 5', '10 goblet squat', '10 bent-over row', '10 dumbbell shoulder press'),
      half('level 1', 'circuit x3, 40/20', 'goblet squat', 'bent-over row', 'dumbbell shoulder press'),
      half('level 1', 'straight x5, 60/30', 'goblet squat', 'bent-over row'),
      half('level 1', 'amrap 8', '10 goblet squat', '10 knee push-up', '10 dead bug'),
    ],
  },
  {
    check: shortRestForHeavyWork,
    bad: half('level 2', 'straight x4, 40/60', 'goblet squat heavy', 'dead bug'),
    finding: {
      code: 'short-rest-for-heavy-work',
      severity: 'look at',
      lines: ['A'],
      source: published('ACSM, Ratamess 2009'),
      line: 'A',
      restSeconds: 60,
      leastSeconds: 120,
      mend: 'rest A 120',
    },
    near: [
      half('level 2', 'straight x3, 40/120', 'goblet squat heavy', 'dead bug'),
      half('level 2', 'straight x4, 40/60', 'goblet squat', 'dead bug'),
      half('level 2', 'circuit x3, 40/30', 'goblet squat heavy', 'dead bug', 'push-up'),
    ],
  },
  {
    check: shortRestForHeavyWork,
    bad: fixed(24, 'level 2', 'straight x4, 40/60', 'goblet squat heavy', 'dead bug'),
    finding: {
      code: 'short-rest-for-heavy-work',
      severity: 'look at',
      lines: ['A'],
      source: published('ACSM, Ratamess 2009'),
      line: 'A',
      restSeconds: 60,
      leastSeconds: 120,
      mend: 'weight A medium',
    },
    near: [half('level 2', 'straight x4, 40/60', 'goblet squat medium', 'dead bug')],
  },
  {
    check: headDownThenUp,
    bad: half(
      'level 1, older adults',
      'circuit x2, 40/0',
      'plank walk-out',
      'march',
      'rest 60',
      ...easyCircuit,
    ),
    finding: {
      code: 'head-down-then-up',
      severity: 'look at',
      lines: ['A'],
      source: practice,
      mend: 'swap A plank',
    },
    near: [
      half('level 1, older adults', 'circuit x2, 40/20', 'plank walk-out', 'march'),
      half('level 1', 'circuit x2, 40/0', 'plank walk-out', 'march'),
      half('level 1, older adults', 'circuit x2, 40/0', 'plank walk-out easier incline push-up', 'march'),
    ],
  },
  {
    check: longOnTheBack,
    bad: half('level 1, older adults', 'circuit x3, 40/20', 'glute bridge', 'dead bug'),
    finding: {
      code: 'long-on-the-back',
      severity: 'look at',
      lines: ['A', 'B'],
      source: practice,
      seconds: 340,
      mend: 'swap B plank toe tap',
    },
    near: [
      half('level 1, older adults', 'circuit x2, 40/20', 'glute bridge', 'dead bug'),
      half('level 1', 'circuit x3, 40/20', 'glute bridge', 'dead bug'),
      half('level 1, older adults', 'circuit x3, 40/20', 'glute bridge', 'dead bug or bird dog'),
    ],
  },
  {
    check: newMoveNotExplained,
    bad: half('level 2', ...easyCircuit),
    facts: taught('goblet-squat'),
    finding: {
      code: 'new-move-not-explained',
      severity: 'look at',
      lines: ['A'],
      source: practice,
      explainSeconds: 10,
    },
    near: [
      half('level 2', 'explain 30', ...easyCircuit),
      half('level 2', 'amrap 4', '10 push-up', 'rest 60, explain', ...easyCircuit),
    ],
    nearFacts: taught('goblet-squat'),
  },
  {
    check: newMoveNotExplained,
    bad: half('level 2', 'explain 30', 'amrap 4', '10 push-up', 'rest 60', ...easyCircuit),
    facts: taught('goblet-squat'),
    finding: {
      code: 'new-move-not-explained',
      severity: 'look at',
      lines: ['B'],
      source: practice,
      explainSeconds: 10,
      mend: 'explain after A 10',
    },
    near: [half('level 2', ...easyCircuit)],
    nearFacts: { movesTaught: new Set(['push-up']) },
  },
  {
    check: newMoveOutOfSight,
    bad: half('level 2', 'circuit x3, 40/20', 'dead bug + bear hold', 'goblet squat'),
    facts: taught('bear-hold'),
    finding: { code: 'new-move-out-of-sight', severity: 'look at', lines: ['A2'], source: practice },
    near: [
      half('level 2', 'circuit x3, 40/20', 'goblet squat + bear hold', 'dead bug'),
      half('level 2', 'circuit x3, 40/20', 'dead bug', 'bear hold', 'goblet squat'),
    ],
    nearFacts: taught('bear-hold'),
  },
  {
    check: newMoveOutOfSight,
    bad: half(
      'level 2',
      'amrap 4',
      '10 push-up',
      'circuit x3, 40/20',
      'dead bug + bear hold',
      'goblet squat',
    ),
    facts: taught('bear-hold'),
    finding: {
      code: 'new-move-out-of-sight',
      severity: 'look at',
      lines: ['B2'],
      source: practice,
      mend: 'explain after A 10',
    },
    near: [
      half(
        'level 2',
        'amrap 4',
        '10 push-up',
        'explain 30',
        'circuit x3, 40/20',
        'dead bug + bear hold',
        'goblet squat',
      ),
    ],
    nearFacts: taught('bear-hold'),
  },
  {
    check: manyNewMoves,
    bad: half('level 2', ...easyCircuit),
    facts: taught('goblet-squat', 'bent-over-row', 'dead-bug', 'march'),
    finding: {
      code: 'many-new-moves',
      severity: 'look at',
      lines: ['A', 'B', 'C', 'D'],
      source: practice,
      count: 4,
      most: 3,
    },
    near: [half('level 2', ...easyCircuit)],
    nearFacts: taught('goblet-squat', 'bent-over-row', 'dead-bug'),
  },
  {
    check: stationLengthsUnequal,
    bad: half('level 2', 'stations x2, 40/20', 'goblet squat', 'bent-over row + push-up', 'dead bug'),
    finding: {
      code: 'station-lengths-unequal',
      severity: 'look at',
      lines: ['B'],
      source: practice,
      shortestSeconds: 40,
      longestSeconds: 80,
      mend: 'work B 20',
    },
    near: [
      half('level 2', 'stations x2, 40/20', 'goblet squat', 'bent-over row', 'reverse lunge', 'dead bug'),
      half('level 2', 'circuit x2, 40/20', 'goblet squat', 'bent-over row + push-up', 'dead bug'),
    ],
  },
  {
    check: twoTechnicalStations,
    bad: half('level 3', 'stations x2, 40/20', 'kettlebell clean', 'push-up', 'windmill', 'dead bug'),
    finding: {
      code: 'two-technical-stations',
      severity: 'look at',
      lines: ['A', 'C'],
      source: practice,
      mend: expect.stringMatching(/^swap C .+$/),
    },
    near: [
      half('level 3', 'stations x2, 40/20', 'kettlebell clean', 'push-up', 'goblet squat', 'dead bug'),
      half('level 3', 'circuit x2, 40/20', 'kettlebell clean', 'push-up', 'windmill', 'dead bug'),
    ],
  },
  {
    check: pushPullUneven,
    bad: half(
      'level 2',
      'circuit x3, 40/20',
      'push-up',
      'goblet squat',
      'dumbbell shoulder press',
      'dead bug',
    ),
    finding: {
      code: 'push-pull-uneven',
      severity: 'look at',
      lines: ['A', 'C'],
      source: practice,
      pushSets: 6,
      pullSets: 0,
      mend: expect.stringMatching(/^swap [AC] .+$/),
    },
    near: [
      half('level 2', 'circuit x3, 40/20', 'push-up', 'goblet squat', 'bent-over row', 'dead bug'),
      half(
        'level 2, focus push',
        'circuit x3, 40/20',
        'push-up',
        'goblet squat',
        'dumbbell shoulder press',
        'dead bug',
      ),
      half(
        'level 2',
        'kit: none',
        'circuit x3, 40/20',
        'push-up',
        'bodyweight squat',
        'wide push-up',
        'dead bug',
      ),
    ],
  },
];
