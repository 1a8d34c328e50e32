import { describe, expect, test } from 'vitest';
import { buildTimeline } from '../../../domain/timing/build-timeline.ts';
import {
  emom,
  letter,
  letters,
  move,
  on,
  open,
  plan,
  rounds,
  tabata,
  testContext,
} from '../../helpers/plan-builder.ts';

/** Lengths of timed protocols as published: n work bouts, n − 1 rests. */

const context = testContext();
const twelve = letters(...Array.from({ length: 12 }, (_, index) => `station ${index + 1}`));
const ten = letters(...Array.from({ length: 10 }, (_, index) => `exercise ${index + 1}`));
const one = letters('bout');

const klika = 'Klika B, Jordan C. ACSMs Health Fit J 2013;17(3):8–13';
const tabataSource = 'Tabata I et al. Med Sci Sports Exerc 1996;28:1327–30';
const gibala = 'Gibala MJ. Sports Sci Exchange 2015, no. 139';
const gettman = 'Gettman LR et al. Med Sci Sports 1978;10:171–6';
const planks = 'IJERPH 2021;18:4606, table 1';

const alone = [
  {
    what: '12 stations 30/10',
    block: rounds('circuit', 1, on(30, 10), twelve),
    total: 470,
    work: 360,
    source: klika,
  },
  {
    what: '12 stations 30/10, three rounds',
    block: rounds('circuit', 3, on(30, 10), twelve),
    total: 1430,
    work: 1080,
    source: klika,
  },
  { what: '8 × 20/10', block: tabata(1, one), total: 230, work: 160, source: tabataSource },
  {
    what: '4 × 240 s, 180 s between',
    block: rounds('circuit', 4, on(240, 180), one),
    total: 1500,
    work: 960,
    source: 'Helgerud J et al. Med Sci Sports Exerc 2007;39:665–71',
  },
  {
    what: '10 × 60/60',
    block: rounds('circuit', 10, on(60, 60), one),
    total: 1140,
    work: 600,
    source: gibala,
  },
  {
    what: '4 × 30/240',
    block: rounds('circuit', 4, on(30, 240), one),
    total: 840,
    work: 120,
    source: gibala,
  },
  {
    what: '5 × 30/240',
    block: rounds('circuit', 5, on(30, 240), one),
    total: 1110,
    work: 150,
    source: gibala,
  },
  {
    what: '6 × 30/240',
    block: rounds('circuit', 6, on(30, 240), one),
    total: 1380,
    work: 180,
    source: gibala,
  },
  {
    what: '10 exercises × 2 sets of 15 reps at 3 s, 20 s between',
    block: rounds('straight', 2, on(45, 20), ten),
    total: 1280,
    work: 900,
    source: gettman,
  },
  {
    what: '10 exercises × 2 sets of 15 reps at 3 s, 25 s between',
    block: rounds('straight', 2, on(45, 25), ten),
    total: 1375,
    work: 900,
    source: gettman,
  },
  {
    what: 'planks 3 × 30/15',
    block: rounds('circuit', 3, on(30, 15), one),
    total: 120,
    work: 90,
    source: planks,
  },
  {
    what: 'planks 5 × 15/10',
    block: rounds('circuit', 5, on(15, 10), one),
    total: 115,
    work: 75,
    source: planks,
  },
  {
    what: '3 × 15/45',
    block: rounds('circuit', 3, on(15, 45), one),
    total: 135,
    work: 45,
    source: 'Negrete RJ et al. Int J Sports Phys Ther 2013;8:138–44',
  },
  {
    what: 'EMOM 15, 10 reps in 20 s',
    block: emom(15, [letter([move('bout', { reps: 10 })])], { workSeconds: 20 }),
    total: 900,
    work: 300,
    source: 'term as used in Da Silva-Grigoletto ME et al. 2020; lengths are arithmetic',
  },
];

test.each(alone)('$what ($source)', ({ block, total, work }) => {
  const { totalSeconds, workSeconds } = buildTimeline(plan([block]), context);
  expect({ totalSeconds, workSeconds }).toEqual({ totalSeconds: total, workSeconds: work });
});

const coolDownSeconds = 300;

const beforeACoolDown = [
  { what: '12 stations 30/10', block: rounds('circuit', 1, on(30, 10), twelve), total: 480, source: klika },
  {
    what: '12 stations 30/10 × 3',
    block: rounds('circuit', 3, on(30, 10), twelve),
    total: 1440,
    source: klika,
  },
  { what: '8 × 20/10', block: tabata(1, one), total: 240, source: tabataSource },
  {
    what: '4 × [8 × 20/10], 60 s between; 1,200 s with the last minute',
    block: tabata(4, one, { betweenSeconds: 60 }),
    total: 1140,
    source: 'Emberts T et al. J Sports Sci Med 2013;12:612–13',
  },
  { what: '10 × 60/60', block: rounds('circuit', 10, on(60, 60), one), total: 1200, source: gibala },
];

test.each(beforeACoolDown)('with its last rest: $what ($source)', ({ block, total }) => {
  const { totalSeconds } = buildTimeline(plan([block, open('cool-down', coolDownSeconds)]), context);
  expect(totalSeconds - coolDownSeconds).toBe(total);
});

describe('from the same sources', () => {
  test(`8 × 20/10 is two of work to one of rest (${tabataSource})`, () => {
    const { workSeconds, restSeconds } = buildTimeline(
      plan([tabata(1, one), open('cool-down', 300)]),
      context,
    );
    expect(workSeconds / restSeconds).toBe(2);
  });

  test('EMOM 15 with 10 reps in 20 s gives 150 reps and 600 s of rest (arithmetic)', () => {
    const block = emom(15, [letter([move('bout', { reps: 10 })])], { workSeconds: 20 });
    const { segments, restSeconds } = buildTimeline(plan([block]), context);
    const reps = segments.reduce((sum, segment) => sum + (segment.reps ?? 0), 0);
    expect({ reps, restSeconds }).toEqual({ reps: 150, restSeconds: 600 });
  });

  test('no rest inside a superset, one after each pair (Robbins DW et al. J Strength Cond Res 2010;24:2873–82)', () => {
    const pair = letter([move('press'), move('row')]);
    const { segments } = buildTimeline(plan([rounds('straight', 2, on(40, 60), [pair])]), context);
    expect(segments.map(({ kind }) => kind)).toEqual(['work', 'work', 'rest', 'work', 'work']);
  });

  test('12 reps at 3-1-1-0 is 60 s of work (arithmetic)', () => {
    const tempo = { lowerSeconds: 3, bottomPauseSeconds: 1, liftSeconds: 1, topPauseSeconds: 0 };
    const block = rounds('straight', 1, undefined, [letter([move('squat', { reps: 12, tempo })])]);
    expect(buildTimeline(plan([block]), context).workSeconds).toBe(60);
  });
});
