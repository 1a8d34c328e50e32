import { type ClassReport, reportOnClass } from '../class-report.ts';
import type { Context } from '../context.ts';
import type { WallTime } from './plan.ts';

/** Ready classes for whoever takes one over without a plan: level 1, a mat each and nothing else. */
export const houseClassNames = ['House Full Body', 'House Legs & Trunk', 'House Push & Move'] as const;

export type HouseClassName = (typeof houseClassNames)[number];

/** What the class is for; what is not known stays away from its title line. */
export type HouseClassFacts = {
  readonly slotSeconds: number;
  readonly startsAt: WallTime;
  readonly people?: number;
  readonly room?: string;
};

type Circuit = { readonly interval: string; readonly moves: readonly string[] };

const circuits: Readonly<Record<HouseClassName, readonly [Circuit, Circuit]>> = {
  'House Full Body': [
    {
      interval: '40/20',
      moves: ['bodyweight squat', 'knee push-up', 'reverse lunge alternating', 'dead bug'],
    },
    { interval: '30/20', moves: ['step touch', 'glute bridge', 'plank'] },
  ],
  'House Legs & Trunk': [
    { interval: '40/20', moves: ['bodyweight squat', 'calf raise', 'glute bridge', 'dead bug'] },
    { interval: '30/20', moves: ['wall sit', 'bird dog', 'reverse lunge alternating'] },
  ],
  'House Push & Move': [
    { interval: '30/20', moves: ['march', 'knee push-up', 'bodyweight squat', 'superman'] },
    { interval: '40/20', moves: ['step touch', 'plank', 'reverse lunge alternating'] },
  ],
};

/** ACSM: warm-up and cool-down of 5–10 minutes each; the shorter end. */
const acsmLeastSeconds = 300;

const mostRounds = 9;

/** The class as text, timed for its slot: the cool-down takes what the rounds leave. */
export function houseClass(name: HouseClassName, facts: HouseClassFacts, context: Context): string {
  const least = Math.max(acsmLeastSeconds, context.settings.floors.leastCoolDownSeconds);
  const made = Array.from({ length: mostRounds * 2 }, (_, step) => {
    const text = textOf(name, [Math.floor(step / 2) + 1, Math.ceil(step / 2) + 1], facts, context);
    const report = reportOnClass(text, context);
    const fits = report.kind === 'report' && report.fit.spareSeconds >= 0;
    return { text, coolDownSeconds: fits ? lastBlockSeconds(report) : 0 };
  });
  const long = made.filter(({ coolDownSeconds }) => coolDownSeconds >= least);
  const best = long.toSorted((a, b) => a.coolDownSeconds - b.coolDownSeconds)[0] ?? made[0];
  return best?.text ?? '';
}

function textOf(
  name: HouseClassName,
  rounds: readonly [number, number],
  { slotSeconds, startsAt, people, room }: HouseClassFacts,
  { settings }: Context,
): string {
  const [first, second] = circuits[name];
  const title = [
    name,
    `${Math.round(slotSeconds / 60)} min`,
    'level 1',
    ...(people === undefined ? [] : [`${people} people`]),
    `${startsAt.date} ${startsAt.time}`,
    ...(room === undefined ? [] : [room]),
  ].join(', ');
  const warmUp = Math.max(acsmLeastSeconds, settings.floors.leastWarmUpSeconds);
  return [
    title,
    `warm-up ${Math.floor(warmUp / 60)}:${String(warmUp % 60).padStart(2, '0')}: march, hip hinge, arm circles`,
    ...linesOf(first, rounds[0]),
    'rest 60',
    ...linesOf(second, rounds[1]),
    'cool-down to the end',
  ].join('\n');
}

function linesOf({ interval, moves }: Circuit, rounds: number): readonly string[] {
  return [`circuit x${rounds}, ${interval}`, ...moves];
}

function lastBlockSeconds({ timeline, plan }: ClassReport): number {
  const own = timeline.segments.filter(({ block }) => block === plan.blocks.length - 1);
  return own.reduce((sum, { startSeconds, endSeconds }) => sum + endSeconds - startSeconds, 0);
}
