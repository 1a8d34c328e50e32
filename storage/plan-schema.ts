import { z } from 'zod';
import { kitItems } from '../domain/catalogue/kit.ts';
import { muscles } from '../domain/catalogue/muscles.ts';
import { patterns } from '../domain/catalogue/patterns.ts';

const span = z.strictObject({ start: z.number(), end: z.number() });
const wallTime = z.strictObject({ date: z.string(), time: z.string() });
const kit = z.enum(kitItems);
const level = z.union([z.literal(1), z.literal(2), z.literal(3)]);

export const tempoSchema = z.strictObject({
  lowerSeconds: z.number(),
  bottomPauseSeconds: z.number(),
  liftSeconds: z.number(),
  topPauseSeconds: z.number(),
});

const facts = z.strictObject({
  title: z.string().exactOptional(),
  slotSeconds: z.number(),
  level: z.union([level, z.literal('mixed')]).exactOptional(),
  people: z.number().exactOptional(),
  focus: z.string().exactOptional(),
  aim: z.string().exactOptional(),
  beginners: z.boolean(),
  olderAdults: z.boolean(),
  hotRoom: z.boolean(),
  startsAt: wallTime.exactOptional(),
  room: z.string().exactOptional(),
  kit: z.array(kit).exactOptional(),
});

const interval = z.strictObject({ workSeconds: z.number(), restSeconds: z.number() });

const weight = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('mass'), amount: z.number(), unit: z.enum(['kg', 'lb']) }),
  z.strictObject({ kind: z.literal('feel'), feel: z.enum(['light', 'medium', 'heavy']) }),
]);

const option = z.strictObject({
  kind: z.enum(['easier', 'harder', 'or']),
  moveId: z.string().exactOptional(),
  text: z.string(),
});

const wish = z.strictObject({
  words: z.string(),
  muscles: z.array(z.enum(muscles)),
  patterns: z.array(z.enum(patterns)),
  region: z.enum(['upper', 'lower', 'trunk']).exactOptional(),
  kit: z.array(kit),
  without: z.array(z.enum(['kit', ...kitItems, 'jumps', 'floor', 'wrists', 'overhead'])),
  standing: z.boolean(),
});

const move = z.strictObject({ kind: z.literal('move'), moveId: z.string() });
const words = z.strictObject({ kind: z.literal('words'), text: z.string() });

const plannedMove = z.strictObject({
  id: z.string(),
  span,
  choice: z.discriminatedUnion('kind', [move, z.strictObject({ kind: z.literal('open'), wish }), words]),
  sides: z.enum(['both', 'each side', 'split sides', 'alternating', 'right', 'left']),
  workSeconds: z.number().exactOptional(),
  reps: z.number().exactOptional(),
  tempo: tempoSchema.exactOptional(),
  weight: weight.exactOptional(),
  rpe: z.number().exactOptional(),
  metres: z.number().exactOptional(),
  options: z.array(option),
  note: z.string().exactOptional(),
});

const letter = z.strictObject({
  id: z.string(),
  span,
  order: z.enum(['in turn', 'by round']),
  moves: z.array(plannedMove),
  restSeconds: z.number().exactOptional(),
  wholeSetEachSide: z.boolean(),
  burnout: z.boolean(),
  rounds: z.number().exactOptional(),
  say: z.array(z.string()),
});

const blockBase = { id: z.string(), span, name: z.string().exactOptional() };

const letteredBase = {
  ...blockBase,
  letters: z.array(letter),
  countInSeconds: z.number().exactOptional(),
  burnout: z.boolean(),
  marchInRests: z.boolean(),
  pairs: z.enum(['swap', 'one rests']).exactOptional(),
};

const openBlock = z.strictObject({
  ...blockBase,
  kind: z.enum(['warm-up', 'cool-down', 'mobility', 'song']),
  length: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('fixed'), seconds: z.number() }),
    z.strictObject({ kind: z.literal('to the end') }),
  ]),
  items: z.array(
    z.strictObject({
      id: z.string(),
      span,
      what: z.discriminatedUnion('kind', [move, words]),
      workSeconds: z.number().exactOptional(),
      detail: z.string().exactOptional(),
    }),
  ),
  say: z.array(z.string()),
});

const roundsBlock = z.strictObject({
  ...letteredBase,
  kind: z.enum(['circuit', 'straight', 'stations', 'finisher']),
  rounds: z.number(),
  intervals: z.array(interval),
  betweenRoundsSeconds: z.number().exactOptional(),
  betweenLettersSeconds: z.number().exactOptional(),
  peoplePerStation: z.number().exactOptional(),
});

const emomBlock = z.strictObject({
  ...letteredBase,
  kind: z.literal('emom'),
  intervalSeconds: z.number(),
  intervals: z.number(),
  workSeconds: z.number().exactOptional(),
});

const tabataBlock = z.strictObject({
  ...letteredBase,
  kind: z.literal('tabata'),
  times: z.number(),
  betweenSeconds: z.number().exactOptional(),
});

const amrapBlock = z.strictObject({
  ...letteredBase,
  kind: z.enum(['amrap', 'for time']),
  seconds: z.number(),
  aboutRounds: z.number().exactOptional(),
});

const ladderBlock = z.strictObject({
  ...letteredBase,
  kind: z.literal('ladder'),
  rungs: z.array(z.number()),
  capSeconds: z.number().exactOptional(),
});

const timeBlock = z.strictObject({
  ...blockBase,
  kind: z.enum(['rest', 'water', 'explain', 'set-up', 'clear-up']),
  seconds: z.number(),
  explain: z.boolean(),
});

/** The plan as stored, shape 1; a test holds it in lock-step with the type `Plan`. */
export const planSchema = z.strictObject({
  facts,
  blocks: z.array(
    z.discriminatedUnion('kind', [
      openBlock,
      roundsBlock,
      emomBlock,
      tabataBlock,
      amrapBlock,
      ladderBlock,
      timeBlock,
    ]),
  ),
});
