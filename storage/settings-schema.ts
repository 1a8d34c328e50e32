import { z } from 'zod';
import { kitItems } from '../domain/catalogue/kit.ts';
import { cautions, traits } from '../domain/catalogue/move.ts';
import { muscles } from '../domain/catalogue/muscles.ts';
import { patterns } from '../domain/catalogue/patterns.ts';
import { defaultSettings, groupRoles } from '../domain/settings.ts';
import { tempoSchema } from './plan-schema.ts';

/** `HH:MM`. */
const timeOfDay = z.string().regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/);
const weekday = z.enum(['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun']);
const muscle = z.enum(muscles);
const kitNeed = z.strictObject({ item: z.enum(kitItems), pieces: z.number() });

const room = z.strictObject({
  name: z.string(),
  kit: z.partialRecord(z.enum(kitItems), z.number()),
  capacity: z.number().exactOptional(),
  areaSquareMetres: z.number().exactOptional(),
  doorSeconds: z.number(),
  clearUpSeconds: z.number(),
  emergencyCard: z.string().exactOptional(),
});

const sharedKit = z.strictObject({ item: z.enum(kitItems), pieces: z.number(), rooms: z.array(z.string()) });

const slot = z.strictObject({
  id: z.string(),
  name: z.string(),
  weekday,
  time: timeOfDay,
  seconds: z.number(),
  room: z.string().exactOptional(),
  instructorId: z.string().exactOptional(),
  people: z.number().exactOptional(),
});

const transitions = z.strictObject({
  putDownSeconds: z.number(),
  pickUpSeconds: z.number(),
  swapSeconds: z.number(),
  standKneelSeconds: z.number(),
  standFloorSeconds: z.number(),
  floorTurnSeconds: z.number(),
  sideSeconds: z.number(),
  firstRoundExtraSeconds: z.number(),
  factor: z.number(),
});

const floors = z.strictObject({
  leastWarmUpSeconds: z.number(),
  leastCoolDownSeconds: z.number(),
  leastRestSeconds: z.number(),
});

const checks = z.strictObject({
  lateStartShareOfBout: z.number(),
  lateStartSecondsOfBout: z.number(),
  unusedShareOfTeachingTime: z.number(),
  jumpsFreeSeconds: z.number(),
  gripBoutSeconds: z.number(),
  allOutBeginnersSeconds: z.number(),
  loadedNonStopBeginnersSeconds: z.number(),
  squareMetresAPerson: z.number(),
  squareMetresAPersonMoving: z.number(),
  floorChangesAMinute: z.strictObject({ 1: z.number(), 2: z.number(), 3: z.number() }),
  newMoves: z.number(),
  explainNewMoveSeconds: z.number(),
  heavyCompoundRestSeconds: z.number(),
  supineLongSeconds: z.number(),
  rowBreakSeconds: z.number(),
  rowBoutSeconds: z.number(),
  floorTurnsAMinute: z.number(),
  floorChangesLeast: z.number(),
  breakBetweenBlocksSeconds: z.number(),
  pushPullRatio: z.number(),
  pushPullSets: z.number(),
  recoverySets: z.number(),
  longClassSeconds: z.number(),
  heavyRpe: z.number(),
  knownMovesLeast: z.number(),
  longCoolDownSeconds: z.number(),
  wipeSeconds: z.number(),
});

const dose = z.strictObject({ low: z.number(), high: z.number(), veryHigh: z.number() });

const move = z.strictObject({
  id: z.string(),
  name: z.string(),
  nicknames: z.array(z.string()),
  primeMovers: z.array(muscle),
  assisting: z.array(muscle),
  pattern: z.enum(patterns),
  kit: z.array(kitNeed),
  otherKit: z.array(z.array(kitNeed)).exactOptional(),
  position: z.enum(['standing', 'kneeling', 'seated', 'supine', 'prone', 'side-lying']),
  sides: z.enum(['both at once', 'alternating by nature', 'one-sided']),
  oneSideAtATime: z.boolean(),
  effort: z.enum(['reps', 'hold', 'conditioning', 'mobility']),
  tempo: tempoSchema,
  level: z.union([z.literal(1), z.literal(2), z.literal(3)]),
  easier: z.string().exactOptional(),
  harder: z.string().exactOptional(),
  setUpCue: z.string(),
  cue: z.string(),
  cautions: z.array(z.enum(cautions)),
  traits: z.array(z.enum(traits)),
  energy: z.strictObject({
    edition: z.union([z.literal(2011), z.literal(2024)]),
    code: z.string(),
    met: z.number(),
  }),
  source: z.union([z.literal('common practice'), z.strictObject({ published: z.string() })]),
  retired: z.literal(true).exactOptional(),
});

const retention = z.strictObject({
  deliveryKeyDays: z.number(),
  unsentDraftDays: z.number(),
  sentPayloadDays: z.number(),
  commentDays: z.number(),
  planDays: z.number(),
});

const factorMove = z.strictObject({
  at: z.string(),
  from: z.number(),
  to: z.number(),
  classes: z.number(),
  over: z.number(),
  short: z.number(),
});

const settings = z.strictObject({
  zone: z.string(),
  reviewChannel: z.string().exactOptional(),
  teamChannel: z.string().exactOptional(),
  headCoaches: z.array(z.string()),
  admins: z.array(z.string()).exactOptional(),
  soleCoachMayApproveOwn: z.boolean(),
  trustedInstructors: z.array(z.string()).exactOptional(),
  roleGroups: z.partialRecord(z.enum(groupRoles), z.string()).exactOptional(),
  smallEditsKeepApproval: z.boolean().exactOptional(),
  rooms: z.array(room),
  sharedKit: z.array(sharedKit).exactOptional(),
  slots: z.array(slot),
  slotHabits: z.array(z.strictObject({ name: z.string(), slotIds: z.array(z.string()) })),
  defaultSlotSeconds: z.number(),
  countInSeconds: z.number(),
  nextCueSeconds: z.number(),
  countdownMinutes: z.array(z.number()),
  countdownPosts: z.boolean(),
  digestTime: z.union([timeOfDay, z.literal('off')]),
  publicUrl: z.string().exactOptional(),
  reportAt: z.strictObject({ weekday, time: timeOfDay }),
  transitions,
  factorMove: factorMove.exactOptional(),
  floors,
  checks,
  dose,
  firstPriority: z.array(muscle),
  mainLifts: z.enum(['keep', 'vary']),
  energyOn: z.boolean(),
  retention,
  ownMoves: z.array(move),
  ownNames: z.record(z.string(), z.string()),
});

const group = z.record(z.string(), z.unknown()).default({});

/** Limits that the stored settings don't have yet stand at their defaults. */
const withDefaults = z
  .looseObject({ transitions: group, floors: group, checks: group, dose: group, retention: group })
  .transform((stored): unknown => ({
    ...defaultSettings,
    ...stored,
    transitions: { ...defaultSettings.transitions, ...stored.transitions },
    floors: { ...defaultSettings.floors, ...stored.floors },
    checks: { ...defaultSettings.checks, ...stored.checks },
    dose: { ...defaultSettings.dose, ...stored.dose },
    retention: { ...defaultSettings.retention, ...stored.retention },
  }));

/** A studio's settings as stored; a test holds it in lock-step with the type `Settings`. */
export const settingsSchema = withDefaults.pipe(settings);
