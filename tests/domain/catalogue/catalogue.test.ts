import { describe, expect, test } from 'vitest';
import { ambiguousNames } from '../../../domain/catalogue/ambiguous-names.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { kitItems } from '../../../domain/catalogue/kit.ts';
import type { Move, MoveId } from '../../../domain/catalogue/move.ts';
import { cautions, traits } from '../../../domain/catalogue/move.ts';
import { idOfName } from '../../../domain/catalogue/move-row.ts';
import { type Muscle, muscles } from '../../../domain/catalogue/muscles.ts';
import { nameWords } from '../../../domain/catalogue/name-words.ts';
import { type Pattern, patterns } from '../../../domain/catalogue/patterns.ts';
import { defaultSettings } from '../../../domain/settings.ts';

const { moves, byId } = catalogue;

const idsWhere = (isWrong: (move: Move) => boolean): readonly MoveId[] =>
  moves.filter(isWrong).map((move) => move.id);

const kitsOf = (move: Move) => [move.kit, ...(move.otherKit ?? [])];

describe('names', () => {
  test('every id is the name in kebab-case and stands once', () => {
    expect(idsWhere((move) => move.id !== idOfName(move.name))).toEqual([]);
    expect(idsWhere((move) => !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(move.id))).toEqual([]);
    expect(byId.size).toBe(moves.length);
    expect(moves.every((move) => byId.get(move.id) === move)).toBe(true);
  });

  test('a name has no sign that the shorthand reads as its own', () => {
    expect(idsWhere((move) => !/^[A-Za-z][A-Za-z' -]+$/.test(move.name))).toEqual([]);
  });

  test('no spelling holds a word that the shorthand reads as a modifier', () => {
    const modifiers =
      /\b(tempo|each|left|right|light|medium|heavy|easier|harder|or|alt|rest|split sides|by round)\b/;
    expect(idsWhere((move) => [move.name, ...move.nicknames].some((name) => modifiers.test(name)))).toEqual(
      [],
    );
    const alternating = (move: Move) => move.nicknames.some((name) => name.includes('alternating'));
    expect(idsWhere((move) => alternating(move) && move.sides !== 'alternating by nature')).toEqual([]);
  });

  test('no name, nickname or shared name is the same as another when read', () => {
    const spellings = [
      ...moves.flatMap((move) => [move.name, ...move.nicknames]),
      ...ambiguousNames.flatMap((shared) => shared.names),
    ];
    const firstByKey = new Map<string, string>();
    const clashes = spellings.flatMap((spelling) => {
      const key = nameWords(spelling).join('');
      const first = firstByKey.get(key);
      firstByKey.set(key, first ?? spelling);
      return first === undefined ? [] : [[first, spelling]];
    });
    expect(clashes).toEqual([]);
  });

  test('shared names point at two moves or more that exist', () => {
    expect(ambiguousNames.filter(({ ids }) => ids.length < 2 || ids.length > 4)).toEqual([]);
    expect(ambiguousNames.flatMap(({ ids }) => ids).filter((id) => !byId.has(id))).toEqual([]);
  });
});

describe('easier and harder options', () => {
  const levelOf = (id: MoveId): number => byId.get(id)?.level ?? Number.NaN;

  test('point at moves that exist', () => {
    const links = moves.flatMap((move) => [move.easier ?? [], move.harder ?? []].flat());
    expect(links.filter((id) => !byId.has(id))).toEqual([]);
  });

  test('an easier option is never of a higher level, a harder one never of a lower', () => {
    expect(idsWhere((move) => move.easier !== undefined && levelOf(move.easier) > move.level)).toEqual([]);
    expect(idsWhere((move) => move.harder !== undefined && levelOf(move.harder) < move.level)).toEqual([]);
  });

  test('every move above level 1 has an easier option', () => {
    expect(idsWhere((move) => move.level > 1 && move.easier === undefined)).toEqual([]);
  });

  test('never lead round in a circle', () => {
    const harderThan = new Map<MoveId, Set<MoveId>>(moves.map((move) => [move.id, new Set()]));
    for (const move of moves) {
      if (move.harder !== undefined) harderThan.get(move.id)?.add(move.harder);
      if (move.easier !== undefined) harderThan.get(move.easier)?.add(move.id);
    }
    const done = new Set<MoveId>();
    const circleFrom = (id: MoveId, path: readonly MoveId[]): readonly MoveId[] => {
      if (path.includes(id)) return [...path, id];
      if (done.has(id)) return [];
      const circle = [...(harderThan.get(id) ?? [])].flatMap((next) => circleFrom(next, [...path, id]));
      done.add(id);
      return circle;
    };
    expect(moves.flatMap((move) => circleFrom(move.id, []))).toEqual([]);
  });
});

describe('coverage', () => {
  const countOf = (isOne: (move: Move) => boolean): number => moves.filter(isOne).length;

  test('at least 240 moves', () => {
    expect(moves.length).toBeGreaterThanOrEqual(240);
  });

  const trunk: readonly Pattern[] = [
    'trunk flexion',
    'anti-extension',
    'anti-rotation',
    'rotation',
    'lateral flexion',
  ];
  test.each(patterns)('pattern %s has at least eight moves, a trunk pattern ten', (pattern) => {
    const least = trunk.includes(pattern) ? 10 : 8;
    expect(countOf((move) => move.pattern === pattern)).toBeGreaterThanOrEqual(least);
  });

  const trains = (move: Move, muscle: Muscle): boolean =>
    (move.effort === 'reps' || move.effort === 'hold') && move.primeMovers.includes(muscle);
  test.each(muscles)(
    '%s is prime mover of at least three moves that count sets, a first priority of six',
    (muscle) => {
      const least = defaultSettings.firstPriority.includes(muscle) ? 6 : 3;
      expect(countOf((move) => trains(move, muscle))).toBeGreaterThanOrEqual(least);
    },
  );

  test.each(kitItems)('%s is used', (item) => {
    expect(countOf((move) => move.kit.some((need) => need.item === item))).toBeGreaterThan(0);
  });

  test('many moves need no kit but a mat', () => {
    expect(countOf((move) => move.kit.every((need) => need.item === 'mat'))).toBeGreaterThan(100);
  });

  test.each(['standing', 'kneeling', 'seated', 'supine', 'prone', 'side-lying'] as const)(
    'position %s has at least eight moves',
    (position) => {
      expect(countOf((move) => move.position === position)).toBeGreaterThanOrEqual(8);
    },
  );

  test.each(traits)('trait %s is used', (trait) => {
    expect(countOf((move) => move.traits.includes(trait))).toBeGreaterThan(0);
  });

  test.each(cautions)('caution %s is used', (caution) => {
    expect(countOf((move) => move.cautions.includes(caution))).toBeGreaterThan(0);
  });

  test('conditioning, mobility and compound finishers', () => {
    expect(countOf((move) => move.effort === 'conditioning')).toBeGreaterThanOrEqual(20);
    expect(countOf((move) => move.effort === 'mobility')).toBeGreaterThanOrEqual(20);
    const finishers = ['squat-to-press', 'clean-and-press', 'dumbbell-burpee-to-press', 'deadlift-to-row'];
    expect(finishers.filter((id) => !byId.get(id)?.traits.includes('compound'))).toEqual([]);
  });

  test('the trade’s commonest moves', () => {
    const commonest = [
      'bodyweight-squat',
      'goblet-squat',
      'glute-bridge',
      'push-up',
      'plank',
      'side-plank',
      'reverse-lunge',
      'mountain-climber',
      'dead-bug',
      'burpee',
      'superman',
      'jumping-jack',
      'kettlebell-swing',
      'bent-over-row',
      'squat-to-press',
    ];
    expect(commonest.filter((id) => !byId.has(id))).toEqual([]);
  });

  /** The stations of Klika B, Jordan C. ACSM's Health Fit J 2013;17(3):8–13. */
  test('the twelve body-weight stations published in 2013', () => {
    const stations = [
      'jumping-jack',
      'wall-sit',
      'push-up',
      'abdominal-crunch',
      'step-up-onto-chair',
      'bodyweight-squat',
      'triceps-dip-on-chair',
      'plank',
      'high-knees-running-in-place',
      'lunge',
      'push-up-and-rotation',
      'side-plank',
    ];
    expect(stations.filter((id) => !byId.has(id))).toEqual([]);
    const kit = stations.flatMap((id) => byId.get(id)?.kit ?? []).map((need) => need.item);
    expect([...new Set(kit)].sort()).toEqual(['chair', 'mat']);
  });
});

describe('facts', () => {
  test('every move has a prime mover, and no muscle twice', () => {
    expect(idsWhere((move) => move.primeMovers.length === 0)).toEqual([]);
    expect(
      idsWhere((move) => {
        const all = [...move.primeMovers, ...move.assisting];
        return new Set(all).size !== all.length;
      }),
    ).toEqual([]);
  });

  test('a repetition takes one to eight seconds', () => {
    const repSeconds = ({ tempo }: Move): number =>
      tempo.lowerSeconds + tempo.bottomPauseSeconds + tempo.liftSeconds + tempo.topPauseSeconds;
    expect(idsWhere((move) => repSeconds(move) < 1 || repSeconds(move) > 8)).toEqual([]);
  });

  /** Klika & Jordan 2013: 30 s of a body-weight move is 15–20 repetitions. */
  test.each([
    'jumping-jack',
    'push-up',
    'abdominal-crunch',
    'step-up-onto-chair',
    'bodyweight-squat',
    'lunge',
  ])('30 s of %s is 15 to 20 repetitions', (id) => {
    const tempo = byId.get(id)?.tempo;
    const seconds =
      (tempo?.lowerSeconds ?? 0) +
      (tempo?.bottomPauseSeconds ?? 0) +
      (tempo?.liftSeconds ?? 0) +
      (tempo?.topPauseSeconds ?? 0);
    const reps = Math.floor(30 / seconds);
    expect(reps >= 15 && reps <= 20).toBe(true);
  });

  test('kit is counted in whole pieces, each item once, and another kit differs', () => {
    expect(kitsSane()).toEqual([]);
  });

  const kitsSane = () =>
    idsWhere(
      (move) =>
        kitsOf(move).some(
          (kit) =>
            new Set(kit.map((need) => need.item)).size !== kit.length ||
            kit.some((need) => need.pieces < 1 || need.pieces > 2),
        ) || new Set(kitsOf(move).map((kit) => JSON.stringify(kit))).size !== kitsOf(move).length,
    );

  test('only a move that trains both sides at once can be done one side at a time', () => {
    expect(idsWhere((move) => move.oneSideAtATime && move.sides !== 'both at once')).toEqual([]);
  });

  test('cues are one short sentence each', () => {
    const isCue = (cue: string): boolean => /^\S.{6,68}\.$/.test(cue);
    expect(idsWhere((move) => !isCue(move.setUpCue) || !isCue(move.cue))).toEqual([]);
  });

  test('mobility is effort and not strength', () => {
    expect(idsWhere((move) => (move.pattern === 'mobility') !== (move.effort === 'mobility'))).toEqual([]);
  });

  test('jumps land hard, and what swings is ballistic', () => {
    expect(idsWhere((move) => move.pattern === 'jump' && !move.traits.includes('impact'))).toEqual([]);
    expect(idsWhere((move) => move.traits.includes('throw') && !move.traits.includes('ballistic'))).toEqual(
      [],
    );
    expect(
      idsWhere(
        (move) => / swing$/.test(move.name) && move.effort === 'reps' && !move.traits.includes('throw'),
      ),
    ).toEqual([]);
  });

  test('traits bring their cautions', () => {
    const without = (trait: Move['traits'][number], caution: Move['cautions'][number]) =>
      idsWhere((move) => move.traits.includes(trait) && !move.cautions.includes(caution));
    expect(without('impact', 'land softly')).toEqual([]);
    expect(without('throw', 'keep clear of the swing')).toEqual([]);
    expect(without('wrists', 'wrists: use fists or handles')).toEqual([]);
    expect(without('lower back', 'brace, keep the back long')).toEqual([]);
    expect(without('head below heart', 'head down: come up slowly')).toEqual([]);
    expect(
      idsWhere(
        (move) =>
          move.position === 'supine' && !move.cautions.includes('flat on the back: offer a raised option'),
      ),
    ).toEqual([]);
    expect(
      idsWhere(
        (move) =>
          move.kit.some(({ item }) => item.includes('band') || item.includes('strap')) &&
          !move.cautions.includes('check bands and anchors'),
      ),
    ).toEqual([]);
  });

  test('traits and cautions stand once a move', () => {
    expect(idsWhere((move) => new Set(move.traits).size !== move.traits.length)).toEqual([]);
    expect(idsWhere((move) => new Set(move.cautions).size !== move.cautions.length)).toEqual([]);
  });

  /** Loads of the push-up, in this order: Ebben WP et al. J Strength Cond Res 2011;25:2891–4. */
  test('push-ups grow harder from raised hands over the floor to raised feet', () => {
    const levels = ['incline-push-up', 'push-up', 'decline-push-up'].map((id) => byId.get(id)?.level ?? 0);
    expect(levels).toEqual(levels.toSorted((a, b) => a - b));
    expect(byId.get('push-up')?.harder).toBe('decline-push-up');
    expect(byId.get('incline-push-up')?.harder).toBe('push-up');
    expect(byId.get('knee-push-up')?.harder).toBe('push-up');
  });

  /** The worked example of fractional sets, weights of Pelland JC et al. Sports Med 2025, doi 10.1007/s40279-025-02344-w. */
  test.each([
    ['push-up', ['chest'], ['shoulders', 'triceps']],
    ['dumbbell-shoulder-press', ['shoulders'], ['triceps']],
    ['bent-over-row', ['upper back'], ['biceps', 'lats', 'shoulders']],
    ['bodyweight-squat', ['quadriceps'], ['glutes', 'hamstrings']],
  ])('%s has the muscles of the worked example', (id, primeMovers, assisting) => {
    expect(byId.get(id)).toMatchObject({ primeMovers, assisting });
  });

  test('the worked example’s sets come out', () => {
    const done: readonly (readonly [MoveId, number])[] = [
      ['push-up', 4],
      ['dumbbell-shoulder-press', 3],
      ['bent-over-row', 4],
      ['bodyweight-squat', 4],
    ];
    const sets = new Map<Muscle, number>();
    const add = (muscle: Muscle, amount: number) => sets.set(muscle, (sets.get(muscle) ?? 0) + amount);
    for (const [id, count] of done) {
      for (const muscle of byId.get(id)?.primeMovers ?? []) add(muscle, count);
      for (const muscle of byId.get(id)?.assisting ?? []) add(muscle, count / 2);
    }
    const { shoulders, ...rest } = Object.fromEntries(sets);
    expect(rest).toEqual({
      chest: 4,
      triceps: 3.5,
      'upper back': 4,
      lats: 2,
      biceps: 2,
      quadriceps: 4,
      glutes: 2,
      hamstrings: 2,
    });
    expect(shoulders).toBe(3 + 2 + 2);
  });
});

/** 2024 Adult Compendium: Herrmann SD et al., J Sport Health Sci 2024;13:6–12; code and MET as printed. */
const compendium2024: Readonly<Record<string, number>> = {
  '02032': 6.0,
  '02034': 3.5,
  '02035': 5.0,
  '02040': 7.5,
  '02050': 6.0,
  '02052': 5.0,
  '02054': 3.5,
  '02055': 5.8,
  '02056': 3.0,
  '02057': 6.5,
  '02058': 9.8,
  '02020': 7.5,
  '02022': 3.8,
  '02024': 2.8,
  '02030': 3.5,
  '02210': 7.0,
  '02214': 11.0,
  '02101': 2.3,
};

test('every energy row is a row of the 2024 Compendium', () => {
  expect(
    idsWhere(({ energy }) => energy.edition !== 2024 || compendium2024[energy.code] !== energy.met),
  ).toEqual([]);
});

/** Codes whose printed text names the activity. */
test.each([
  ['kettlebell-swing', '02058'],
  ['goblet-squat', '02052'],
  ['burpee', '02214'],
  ['mountain-climber', '02214'],
  ['squat-jump', '02214'],
  ['plank', '02024'],
  ['hamstring-stretch', '02101'],
])('%s has the Compendium row whose text names it', (id, code) => {
  expect(byId.get(id)?.energy.code).toBe(code);
});
