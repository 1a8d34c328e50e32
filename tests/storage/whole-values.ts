import type { LetteredBlock, Plan, PlannedMove } from '../../domain/plan/plan.ts';
import { defaultSettings, type Settings } from '../../domain/settings.ts';

const span = { start: 0, end: 4 };

const squat: PlannedMove = {
  id: 'm1',
  span,
  choice: { kind: 'move', moveId: 'goblet-squat' },
  sides: 'split sides',
  workSeconds: 40,
  reps: 8,
  tempo: { lowerSeconds: 3, bottomPauseSeconds: 1, liftSeconds: 1, topPauseSeconds: 0 },
  weight: { kind: 'mass', amount: 12.5, unit: 'kg' },
  rpe: 7.5,
  metres: 20,
  options: [
    { kind: 'easier', moveId: 'bodyweight-squat', text: 'bodyweight squat' },
    { kind: 'or', text: 'their choice' },
  ],
  note: 'slow',
};

const press: PlannedMove = {
  id: 'm2',
  span,
  choice: { kind: 'move', moveId: 'push-up' },
  sides: 'both',
  weight: { kind: 'feel', feel: 'light' },
  options: [],
};

const open: PlannedMove = {
  id: 'm3',
  span,
  choice: {
    kind: 'open',
    wish: {
      words: 'upper pull, no jumps',
      muscles: ['lats'],
      patterns: ['horizontal pull'],
      region: 'upper',
      kit: ['dumbbell'],
      without: ['jumps', 'bench', 'kit'],
      standing: true,
    },
  },
  sides: 'both',
  options: [],
};

const said: PlannedMove = {
  id: 'm4',
  span,
  choice: { kind: 'words', text: 'partner game' },
  sides: 'alternating',
  options: [],
};

const lettered = {
  span,
  name: 'Main',
  letters: [
    {
      id: 'l1',
      span,
      order: 'by round',
      moves: [squat, press],
      restSeconds: 20,
      wholeSetEachSide: true,
      burnout: true,
      rounds: 3,
      say: ['chest up'],
    },
    {
      id: 'l2',
      span,
      order: 'in turn',
      moves: [open, said],
      wholeSetEachSide: false,
      burnout: false,
      say: [],
    },
  ],
  countInSeconds: 10,
  burnout: false,
  marchInRests: true,
  pairs: 'one rests',
} as const satisfies Omit<LetteredBlock, 'kind' | 'id'> & Record<string, unknown>;

/** A plan in which every kind of block and every optional field occurs. */
export const fullPlan: Plan = {
  facts: {
    title: 'Lift',
    slotSeconds: 2700,
    level: 'mixed',
    people: 12,
    focus: 'legs',
    aim: 'depth',
    beginners: true,
    olderAdults: false,
    hotRoom: false,
    startsAt: { date: '2026-11-24', time: '18:00' },
    room: 'Hall',
    kit: ['mat', 'dumbbell'],
  },
  blocks: [
    {
      kind: 'warm-up',
      id: 'b1',
      span,
      name: 'Wake',
      length: { kind: 'fixed', seconds: 300 },
      items: [
        {
          id: 'i1',
          span,
          what: { kind: 'move', moveId: 'arm-circle' },
          workSeconds: 30,
          detail: '10 each side',
        },
        { id: 'i2', span, what: { kind: 'words', text: 'walk about' } },
      ],
      say: ['hello'],
    },
    {
      ...lettered,
      kind: 'stations',
      id: 'b2',
      rounds: 3,
      intervals: [{ workSeconds: 40, restSeconds: 20 }],
      betweenRoundsSeconds: 60,
      betweenLettersSeconds: 30,
      peoplePerStation: 2,
    },
    { ...lettered, kind: 'emom', id: 'b3', intervalSeconds: 60, intervals: 10, workSeconds: 40 },
    { ...lettered, kind: 'tabata', id: 'b4', times: 2, betweenSeconds: 60 },
    { ...lettered, kind: 'for time', id: 'b5', seconds: 600, aboutRounds: 4 },
    { ...lettered, kind: 'ladder', id: 'b6', rungs: [10, 8, 6], capSeconds: 480 },
    { kind: 'water', id: 'b7', span, name: 'Sip', seconds: 60, explain: true },
    { kind: 'cool-down', id: 'b8', span, length: { kind: 'to the end' }, items: [], say: [] },
  ],
};

/** Settings in which every optional field occurs. */
export const fullSettings: Settings = {
  ...defaultSettings,
  roleGroups: { headCoaches: 'S1', admins: 'S2', trustedInstructors: 'S3' },
  zone: 'Europe/Berlin',
  reviewChannel: 'C1',
  teamChannel: 'C2',
  publicUrl: 'https://morgen.example',
  headCoaches: ['ines'],
  admins: ['noa'],
  factorMove: { at: '2026-11-23T12:00:00.000Z', from: 1, to: 1.05, classes: 6, over: 4, short: 0 },
  rooms: [
    {
      name: 'Hall',
      kit: { dumbbell: 24, mat: 12 },
      capacity: 20,
      areaSquareMetres: 90,
      doorSeconds: 120,
      clearUpSeconds: 180,
      emergencyCard: 'Phone by the door.',
    },
    { name: 'Loft', kit: {}, doorSeconds: 0, clearUpSeconds: 0 },
  ],
  sharedKit: [{ item: 'sandbag', pieces: 4, rooms: ['Hall', 'Loft'] }],
  slots: [
    {
      id: 'tue-18',
      name: 'Lift',
      weekday: 'Tue',
      time: '18:00',
      seconds: 2700,
      room: 'Hall',
      instructorId: 'mara',
      people: 12,
    },
  ],
  slotHabits: [{ name: 'evenings', slotIds: ['tue-18'] }],
  ownMoves: [
    {
      id: 'towel-row',
      name: 'towel row',
      nicknames: ['door row'],
      primeMovers: ['lats'],
      assisting: ['biceps'],
      pattern: 'horizontal pull',
      kit: [{ item: 'mat', pieces: 1 }],
      otherKit: [[{ item: 'long band', pieces: 1 }], []],
      position: 'standing',
      sides: 'both at once',
      oneSideAtATime: true,
      effort: 'reps',
      tempo: { lowerSeconds: 1, bottomPauseSeconds: 0, liftSeconds: 1, topPauseSeconds: 1 },
      level: 2,
      easier: 'push-up',
      harder: 'push-up',
      setUpCue: 'Towel round the post.',
      cue: 'Pull the elbows back.',
      cautions: ['check bands and anchors'],
      traits: ['grip'],
      energy: { edition: 2024, code: '02050', met: 3.5 },
      source: { published: 'a published source' },
      retired: true,
    },
  ],
  ownNames: { 'door pull': 'towel-row' },
};
