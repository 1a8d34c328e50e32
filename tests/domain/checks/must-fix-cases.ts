import { expect } from 'vitest';
import { ballisticWithoutRest } from '../../../domain/checks/ballistic-without-rest.ts';
import { kitInUse } from '../../../domain/checks/kit-in-use.ts';
import { kitShort } from '../../../domain/checks/kit-short.ts';
import { lowerBackThreeInARow } from '../../../domain/checks/lower-back-three-in-a-row.ts';
import { lyingBesideThrow } from '../../../domain/checks/lying-beside-throw.ts';
import { openLineLeft } from '../../../domain/checks/open-line-left.ts';
import { overRoomCapacity } from '../../../domain/checks/over-room-capacity.ts';
import { overTeachingTime } from '../../../domain/checks/over-teaching-time.ts';
import { sidesUnequal } from '../../../domain/checks/sides-unequal.ts';
import { type CheckCase, fixed, half } from './check-cases.ts';

// Every rule here is common practice, no published source.

export const mustFixCases: readonly CheckCase[] = [
  {
    check: overTeachingTime,
    bad: fixed(20, 'level 2', 'circuit x4, 40/20', 'goblet squat', 'bent-over row', 'dead bug'),
    finding: {
      code: 'over-teaching-time',
      severity: 'must fix',
      source: 'common practice',
      lines: [],
      overSeconds: 120,
      teachingSeconds: 1200,
      mend: expect.any(String),
    },
    near: [fixed(22, 'level 2', 'circuit x4, 40/20', 'goblet squat', 'bent-over row', 'dead bug')],
  },
  {
    check: sidesUnequal,
    bad: half('level 2', 'circuit x3, 40/20', 'reverse lunge right', 'push-up', 'dead bug'),
    finding: {
      code: 'sides-unequal',
      severity: 'must fix',
      source: 'common practice',
      lines: ['A'],
      moveId: 'reverse-lunge',
      unit: 'seconds',
      right: 120,
      left: 0,
      mend: 'sides A split sides',
    },
    near: [
      half('level 2', 'circuit x3, 40/20', 'reverse lunge right', 'push-up', 'reverse lunge left'),
      half('level 2', 'circuit x3, 40/20', 'reverse lunge', 'push-up'),
      half('level 2', 'circuit x3, 40/20', 'reverse lunge + push-up, whole set each side'),
      half('level 2', 'circuit x3, 40/20', 'reverse lunge right + push-up, whole set each side'),
      half('level 2', 'amrap 8', '8 reverse lunge right + 8 push-up, whole set each side'),
    ],
  },
  {
    check: sidesUnequal,
    bad: half('level 2', 'amrap 8', '10 reverse lunge right', '8 reverse lunge left', '10 push-up'),
    finding: {
      code: 'sides-unequal',
      severity: 'must fix',
      source: 'common practice',
      lines: ['A', 'B'],
      moveId: 'reverse-lunge',
      unit: 'reps',
      right: 10,
      left: 8,
      mend: 'sides A split sides\nsides B split sides',
    },
    near: [half('level 2', 'amrap 8', '10 reverse lunge right', '10 reverse lunge left', '10 push-up')],
  },
  {
    check: kitShort,
    bad: half(
      'level 2',
      'kit: kettlebells, mats',
      'circuit x3, 40/20',
      'floor press',
      'goblet squat',
      'step-up',
    ),
    finding: {
      code: 'kit-short',
      severity: 'must fix',
      source: 'common practice',
      lines: ['C'],
      item: 'step',
      needPieces: 1,
      havePieces: 0,
      isUnlisted: true,
      mend: 'kit kettlebells, mats, steps',
    },
    near: [
      half('level 2', 'kit: kettlebells, boxes', 'circuit x3, 40/20', 'goblet squat', 'step-up', 'plank'),
      half('level 2', 'kit: kettlebells, steps', 'circuit x3, 40/20', 'goblet squat', 'step-up', 'plank'),
      half('level 2', 'circuit x3, 40/20', 'floor press', 'goblet squat', 'step-up'),
    ],
  },
  {
    check: kitShort,
    // Eight at each of two stations, whatever is said: 16 bands.
    bad: half('level 2, 16 people, Loft', 'stations x2, 45/15, 2 each', 'standing band row', 'band curl'),
    finding: {
      code: 'kit-short',
      severity: 'must fix',
      source: 'common practice',
      lines: ['A', 'B'],
      item: 'long band',
      needPieces: 16,
      havePieces: 12,
    },
    near: [half('level 2, 16 people, Loft', 'stations x2, 45/15, 2 each', 'standing band row', 'push-up')],
  },
  {
    check: kitShort,
    bad: half('level 2, 16 people, Loft', 'circuit x3, 40/20', 'bent-over row', 'push-up'),
    finding: {
      code: 'kit-short',
      severity: 'must fix',
      source: 'common practice',
      lines: ['A'],
      item: 'dumbbell',
      needPieces: 32,
      havePieces: 30,
      mend: expect.stringMatching(/^swap A /),
    },
    near: [
      half('level 2, 12 people, Loft', 'circuit x3, 40/20', 'bent-over row', 'push-up'),
      half('level 2, 16 people, Loft', 'circuit x3, 40/20', 'goblet squat', 'push-up'),
      half(
        'level 2, 16 people, Loft',
        'stations x2, 45/15, 4 each',
        'bent-over row',
        'push-up',
        'dead bug',
        'plank',
      ),
      half('level 2, 14 people', 'circuit x3, 40/20', 'bent-over row', 'push-up'),
    ],
  },
  {
    check: kitInUse,
    bad: half('level 2, 12 people, Loft', 'circuit x3, 40/20', 'bent-over row', 'push-up'),
    facts: { kitInUse: { dumbbell: 8 } },
    finding: {
      code: 'kit-in-use',
      severity: 'must fix',
      source: 'common practice',
      lines: ['A'],
      item: 'dumbbell',
      needPieces: 24,
      havePieces: 30,
      outPieces: 8,
      mend: 'swap A standing band row',
    },
    near: [half('level 2, 12 people, Loft', 'circuit x3, 40/20', 'bent-over row', 'push-up')],
    nearFacts: { kitInUse: { dumbbell: 6 } },
  },
  {
    check: overRoomCapacity,
    bad: half('level 2, 17 people, Loft', 'circuit x3, 40/20', 'push-up', 'dead bug'),
    finding: {
      code: 'over-room-capacity',
      severity: 'must fix',
      source: 'common practice',
      lines: [],
      people: 17,
      capacity: 16,
    },
    near: [half('level 2, 16 people, Loft', 'circuit x3, 40/20', 'push-up', 'dead bug')],
  },
  {
    check: openLineLeft,
    bad: half('level 2', 'circuit x3, 40/20', 'goblet squat', '? row', '?'),
    facts: { sendingForReview: true },
    finding: {
      code: 'open-line-left',
      severity: 'must fix',
      source: 'common practice',
      lines: ['B', 'C'],
      count: 2,
    },
    near: [half('level 2', 'circuit x3, 40/20', 'goblet squat', '? row', '?')],
  },
  {
    check: lyingBesideThrow,
    bad: half(
      'level 2',
      'stations x2, 45/15',
      'kettlebell swing',
      'dead bug',
      'goblet squat',
      'bent-over row',
    ),
    finding: {
      code: 'lying-beside-throw',
      severity: 'must fix',
      source: 'common practice',
      lines: ['A', 'B'],
      throwing: 'A',
      lying: 'B',
      mend: 'move A after C',
    },
    near: [
      half('level 2', 'stations x2, 45/15', 'kettlebell swing', 'goblet squat', 'dead bug', 'bent-over row'),
      half('level 2', 'circuit x2, 45/15', 'kettlebell swing', 'dead bug', 'goblet squat', 'bent-over row'),
    ],
  },
  {
    check: lyingBesideThrow,
    bad: half('level 2', 'circuit x3, 40/20, in pairs, swap', 'kettlebell swing + dead bug'),
    finding: {
      code: 'lying-beside-throw',
      severity: 'must fix',
      source: 'common practice',
      lines: ['A1', 'A2'],
      throwing: 'A1',
      lying: 'A2',
      mend: 'swap A2 standing crunch',
    },
    near: [half('level 2', 'circuit x3, 40/20, in pairs, swap', 'kettlebell swing + goblet squat')],
  },
  {
    check: ballisticWithoutRest,
    bad: half('level 1', 'circuit x3, 30/0', 'goblet squat', 'squat jump', 'dead bug'),
    finding: {
      code: 'ballistic-without-rest',
      severity: 'must fix',
      source: 'common practice',
      lines: ['B'],
      mend: expect.stringMatching(/^swap B /),
    },
    near: [
      half('level 1', 'circuit x3, 30/15', 'goblet squat', 'squat jump', 'dead bug'),
      half('level 2', 'circuit x3, 30/0', 'goblet squat', 'squat jump', 'dead bug'),
      half('level 1', 'circuit x3, 30/0', 'goblet squat', 'jumping jack', 'dead bug'),
    ],
  },
  {
    check: lowerBackThreeInARow,
    bad: half(
      'beginners',
      'circuit x2, 40/20',
      'Romanian deadlift',
      'bent-over row',
      'deadlift',
      'dead bug',
      'push-up',
    ),
    finding: {
      code: 'lower-back-three-in-a-row',
      severity: 'must fix',
      source: 'common practice',
      lines: ['A', 'B', 'C'],
      mend: expect.stringMatching(/^swap [ABC] with [DE]$/),
    },
    near: [
      half(
        'beginners',
        'circuit x2, 40/20',
        'Romanian deadlift',
        'bent-over row',
        'dead bug',
        'deadlift',
        'push-up',
      ),
      half('beginners', 'straight x3, 40/60', 'Romanian deadlift', 'bent-over row', 'deadlift'),
      half(
        'beginners, focus hinge',
        'circuit x2, 40/20',
        'Romanian deadlift',
        'bent-over row',
        'deadlift',
        'dead bug',
      ),
    ],
  },
];
