import { describe, expect, test } from 'vitest';
import { classOf, linesOf, notesOf, problemsOf, read } from './reading.ts';

describe('block lines and their canonical form', () => {
  test.each<readonly [string, string]>([
    ['circuit x3, 40/20', 'circuit x3, 40/20'],
    ['3 rounds 40/20', 'circuit x3, 40/20'],
    ['Circuit 3x 40/20', 'circuit x3, 40/20'],
    ['circuit ×3 40 on 20 off', 'circuit x3, 40/20'],
    ['circuit 3 rounds, :40/:20', 'circuit x3, 40/20'],
    ['circuit - 3 rounds - 40s on / 20s off', 'circuit x3, 40/20'],
    ['circuit x3, 40s work 20s rest', 'circuit x3, 40/20'],
    ['circuit x3 – 40/20', 'circuit x3, 40/20'],
    ['*circuit* x3, 0:40/0:20', 'circuit x3, 40/20'],
    ['circuit x3, work 40', 'circuit x3, 40/0'],
    ['circuit 2 x3, 40/20', 'circuit (2) x3, 40/20'],
    ['circuit 2 x 3 40/20', 'circuit (2) x3, 40/20'],
    ['circuit 2 x 3 30s work 15s rest', 'circuit (2) x3, 30/15'],
    ['circuit 3 x 40/20', 'circuit x3, 40/20'],
    ['circuit 3 x 14s/10s', 'circuit x3, 14/10'],
    ['circuit (legs) x3, 40/20', 'circuit (legs) x3, 40/20'],
    ['Main circuit x3 40/20', 'circuit (Main) x3, 40/20'],
    ['core finisher 30/10 x2', 'finisher (core) x2, 30/10'],
    ['lower body circuit – 3 rounds – 40/20', 'circuit (lower body) x3, 40/20'],
    ['circuit x4 30”/15”', 'circuit x4, 30/15'],
    ['circuit x4, 30"/15", between rounds 1’', 'circuit x4, 30/15, between rounds 60'],
    ['circuit x3, 40/20, between rounds 60', 'circuit x3, 40/20, between rounds 60'],
    ['circuit work 20 30 40, rest 10', 'circuit, work 20 30 40, rest 10'],
    ['circuit work 20 30 40 rest 10', 'circuit, work 20 30 40, rest 10'],
    ['circuit rest 10 20 30 work 40', 'circuit, work 40, rest 10 20 30'],
    ['circuit x3, work 20 30 40, rest 10 15 20', 'circuit, work 20 30 40, rest 10 15 20'],
    ['circuit x3, work 40, rest 10 20 30', 'circuit, work 40, rest 10 20 30'],
    ['circuit work 40 40 40, rest 20', 'circuit x3, 40/20'],
    ['circuit x3, 40/20, march in the rests', 'circuit x3, 40/20, march in the rests'],
    ['circuit x3, 40/20, in pairs, swap', 'circuit x3, 40/20, in pairs, swap'],
    ['circuit x3 40/20 in pairs one rests burnout', 'circuit x3, 40/20, in pairs, one rests, burnout'],
    ['circuit x3, 40/20, count-in 5', 'circuit x3, 40/20, count-in 5'],
    ['straight sets x3 40/20 between letters 90', 'straight x3, 40/20, between letters 90'],
    ['stations x2, 45/15, 2 each', 'stations x2, 45/15, 2 each'],
    ['finisher, 60/0', 'finisher, 60/0'],
    ['finisher x2, 30/15', 'finisher x2, 30/15'],
    ['emom 10, 40 work', 'emom 10, 40 work'],
    ['every 1:30 x6, work 40', 'every 1:30 x6, 40 work'],
    ['every 90 x6, 40 work', 'every 1:30 x6, 40 work'],
    ['every 2 min x5, 40 work', 'every 2:00 x5, 40 work'],
    ['tabata', 'tabata (8 × 20/10)'],
    ['tabata (8 × 20/10)', 'tabata (8 × 20/10)'],
    ['tabata x3, between 60', 'tabata (8 × 20/10) x3, between 60'],
    ['amrap 8', 'amrap 8:00'],
    ['AMRAP 8 min, about 5 rounds', 'amrap 8:00, about 5 rounds'],
    ['8 min AMRAP', 'amrap 8:00'],
    ['8 min amrap about 5 rounds', 'amrap 8:00, about 5 rounds'],
    ['10 minute emom, 40 work', 'emom 10, 40 work'],
    ['for time, cap 10:00', 'for time, cap 10:00'],
    ['ladder 10 to 1', 'ladder 10 to 1'],
    ['ladder 2 to 10 step 2', 'ladder 2 to 10 step 2'],
    ['ladder 1 to 10 to 1', 'ladder 1 to 10 to 1'],
    ['ladder 21 15 9', 'ladder 21 15 9'],
    ['ladder 21-15-9, in 6:00', 'ladder 21 15 9, in 6:00'],
  ])('%s', (line, printed) => {
    const text = classOf(line, 'goblet squat');
    expect(problemsOf(text)).toEqual([]);
    expect(linesOf(text)).toEqual([printed, 'goblet squat']);
  });

  test.each<readonly [string, string]>([
    ['straight x3', 'straight x3'],
    ['straight x3, rest 60', 'straight x3, rest 60'],
    ['emom 10', 'emom 10'],
    ['every 1:30 x6', 'every 1:30 x6'],
  ])('%s takes its work from reps', (line, printed) => {
    const text = classOf(line, '8 goblet squat');
    expect(problemsOf(text)).toEqual([]);
    expect(linesOf(text)).toEqual([printed, '8 goblet squat']);
  });

  test('straight sets may leave the rounds to letters with their own', () => {
    expect(linesOf(classOf('straight', 'goblet squat 3x10', '4x8 push-up'))).toEqual([
      'straight x1',
      'goblet squat 3x10',
      'push-up 4x8',
    ]);
  });

  test.each<readonly [string, readonly (readonly [string, string])[]]>([
    ['circuit', [['number-needed', 'circuit']]],
    ['circuit x3', [['number-needed', 'circuit']]],
    ['circuit 40/20', [['number-needed', 'circuit']]],
    ['stations 45/15', [['number-needed', 'stations']]],
    ['finisher', [['number-needed', 'finisher']]],
    ['straight', [['number-needed', 'straight']]],
    ['emom', [['number-needed', 'emom']]],
    ['emom 10:30', [['whole-minutes', '10:30']]],
    ['every 1:30', [['number-needed', 'every 1:30']]],
    ['amrap', [['number-needed', 'amrap']]],
    ['for time', [['number-needed', 'for time']]],
    ['ladder', [['number-needed', 'ladder']]],
    ['tabata 8', [['unit-needed', '8']]],
    ['tabata 40/20', [['tabata-is-fixed', '40/20']]],
    ['circuit x3, work 20 30', [['rounds-mismatch', 'x3']]],
    ['circuit, work 20 30 40, rest 10 20', [['lists-differ', 'rest 10 20']]],
    ['circuit x3, 40/20, between letters 60', [['not-here', 'between letters 60']]],
    ['straight x3, 40/20, between rounds 60', [['not-here', 'between rounds 60']]],
    ['emom 10, 40 work, between rounds 60', [['not-here', 'between rounds 60']]],
    ['circuit x3, 40/20, 2 each', [['not-here', '2 each']]],
    ['circuit x3, 40/20, in pairs', [['pairs-asked', 'in pairs']]],
    ['emom 10, 40 work, in pairs, swap', [['interval-too-short', '10 goblet squat']]],
    ['emom 10, in pairs, one rests', [['not-here', 'in pairs, one rests']]],
    ['tabata, in pairs, one rests', [['not-here', 'in pairs, one rests']]],
    ['circuit x3, 40/20, slowly please', [['unknown-words', 'slowly please']]],
    ['circuit x51, 40/20', [['out-of-range', 'x51']]],
    ['circuit x3, 1801/20', [['out-of-range', '1801/20']]],
    ['circuit x3, 40/1801', [['out-of-range', '40/1801']]],
    ['circuit x3, 40/20, 30/10', [['said-twice', '30/10']]],
  ])('%s is a problem', (line, problems) => {
    expect(problemsOf(classOf(line, '10 goblet squat'))).toEqual(problems);
  });

  test.each<readonly [string, string]>([
    ['E2MOM x5, 40 work', 'every 2:00 x5, 40 work'],
    ['e3mom, x4, 40 work', 'every 3:00 x4, 40 work'],
    ['E2MOM 10, 40 work', 'every 2:00 x5, 40 work'],
    ['21 15 9', 'ladder 21 15 9'],
    ['21-15-9', 'ladder 21 15 9'],
    ['10, 8, 6, 4, 2, in 6:00', 'ladder 10 to 2 step 2, in 6:00'],
    ['10 to 1', 'ladder 10 to 1'],
    ['2 to 10 step 2', 'ladder 2 to 10 step 2'],
    ['for time 21 15 9', 'ladder 21 15 9'],
    ['For time: 21-15-9, cap 10:00', 'ladder 21 15 9, in 10:00'],
  ])('%s is read and said', (line, printed) => {
    const text = classOf('warm-up 5:00', line, 'goblet squat');
    expect(problemsOf(text)).toEqual([]);
    expect(linesOf(text)).toEqual(['warm-up 5:00', printed, 'goblet squat']);
    expect(notesOf(text)).toEqual([{ code: 'read-as', read: line, as: printed }]);
  });

  test.each<readonly [string, string]>([
    ['every 2 min for 10 min, 40 work', 'every 2:00 x5, 40 work'],
    ['every minute for 10, 40 work', 'emom 10, 40 work'],
  ])('%s says its length in one way only', (line, printed) => {
    const text = classOf(line, 'goblet squat');
    expect([problemsOf(text), notesOf(text)]).toEqual([[], []]);
    expect(linesOf(text)).toEqual([printed, 'goblet squat']);
  });

  test.each<readonly [string, readonly string[]]>([
    ['E2MOM', ['every 2:00 x6']],
    ['every 2 min', ['every 2:00 x6']],
    ['every 2 min for 9 min', ['every 2:00 x5']],
    ['every 2 min 10', ['every 2:00 x6']],
    ['every 2 x5', ['every 2:00 x5', 'every 2s x5']],
    ['emom x5, 2:00', ['every 2:00 x5']],
    ['2 min emom x5', ['every 2:00 x5']],
    ['emom 10 every 2 min', ['every 2:00 x5']],
    ['emom x10', ['emom 10']],
  ])('%s offers what would work, and that works', (line, works) => {
    const [problem, ...others] = read(classOf(line, '8 push-up')).problems;
    expect(others).toEqual([]);
    expect(problem && 'works' in problem ? [problem.works].flat() : []).toEqual(works);
    const [first = ''] = works;
    expect(problemsOf(classOf(first, '8 push-up'))).toEqual([]);
  });

  test.each<readonly [readonly string[], readonly string[]]>([
    [
      ['superset x3 40/20', 'goblet squat', 'push-up'],
      ['straight x3, 40/20', 'goblet squat + push-up'],
    ],
    [
      ['Super-sets x3, 40/20', 'goblet squat', 'push-up', 'plank', 'dead bug, rest 30'],
      ['straight x3, 40/20', 'goblet squat + push-up', 'plank + dead bug, rest 30'],
    ],
    [
      ['supersets x3, 40/20', 'goblet squat + push-up', 'plank', 'dead bug'],
      ['straight x3, 40/20', 'goblet squat + push-up', 'plank + dead bug'],
    ],
    [
      ['superset x3, 40/20', 'A1 goblet squat', 'A2 push-up', 'A3 plank'],
      ['straight x3, 40/20', 'goblet squat + push-up + plank'],
    ],
    [
      ['tri-set x2, 30/30', 'goblet squat', 'push-up', 'plank'],
      ['straight x2, 30/30', 'goblet squat + push-up + plank'],
    ],
    [
      ['giant set x2, 30/60', 'goblet squat', 'push-up', 'plank', 'dead bug', 'burpee'],
      ['straight x2, 30/60', 'goblet squat + push-up + plank + dead bug + burpee'],
    ],
    [['superset x3: goblet squat 10, 8 push-up'], ['straight x3', '10 goblet squat + 8 push-up']],
  ])('lines under a word for several moves are joined: %j', (lines, printed) => {
    expect(problemsOf(classOf(...lines))).toEqual([]);
    expect(linesOf(classOf(...lines))).toEqual(printed);
  });

  test.each<readonly [readonly string[], readonly string[], string]>([
    [
      ['straight sets x4, 10 reps', 'goblet squat', 'push-up'],
      ['straight x4', '10 goblet squat', '10 push-up'],
      '10 goblet squat, 10 push-up',
    ],
    [
      ['straight x3 8 reps rest 60', 'goblet squat 12kg', 'plank 30s', '12 push-up'],
      ['straight x3, rest 60', '8 goblet squat 12kg', 'plank 30s', '12 push-up'],
      '8 goblet squat 12kg',
    ],
    [
      ['superset x3, 10 reps each', 'goblet squat', 'push-up'],
      ['straight x3', '10 goblet squat + 10 push-up'],
      '10 goblet squat, 10 push-up',
    ],
  ])('reps of a block are those of its moves, and said: %j', (lines, printed, as) => {
    expect(problemsOf(classOf(...lines))).toEqual([]);
    expect(linesOf(classOf(...lines))).toEqual(printed);
    expect(notesOf(classOf(...lines))).toContainEqual(expect.objectContaining({ code: 'read-as', as }));
  });

  test.each<readonly [readonly string[], readonly (readonly [string, string])[]]>([
    [['straight x4, 9 reps', 'side plank'], [['odd-reps', '9 reps']]],
    [['straight x4, 40/20, 10 reps', 'goblet squat'], [['unknown-words', '10 reps']]],
    [['circuit x4, 40/20, 10 reps', 'goblet squat'], [['unknown-words', '10 reps']]],
    [['straight x4, 5000 reps', 'goblet squat'], [['out-of-range', '5000 reps']]],
  ])('%j is a problem', (lines, problems) => {
    expect(problemsOf(classOf(...lines))).toEqual(problems);
  });

  test('how they are joined is said', () => {
    expect(notesOf(classOf('superset x3 40/20', 'goblet squat', 'push-up'))).toEqual([
      { code: 'read-as', read: 'superset x3 40/20', as: 'straight x3, 40/20' },
      { code: 'joined', labels: ['goblet squat', 'push-up'] },
    ]);
  });

  test('lines that are left over are told, with what would work', () => {
    const { problems } = read(classOf('superset x3 40/20', 'goblet squat', 'push-up', 'plank'));
    expect(problems).toMatchObject([
      { code: 'lines-left-over', lines: 3, each: 2, works: 'goblet squat + push-up' },
    ]);
    expect(problemsOf(classOf('tri-set x3 40/20', 'plank'))).toEqual([
      ['lines-left-over', 'tri-set x3 40/20'],
    ]);
  });

  test('a title with such a word stays one', () => {
    for (const title of ['Superset Saturday', 'Supersets', '21-15-9'])
      expect(read(`${title}, 45 min\ncircuit x3, 40/20\nplank`).plan?.facts.title).toBe(title);
  });

  test('a block line without its moves is a problem', () => {
    expect(problemsOf(classOf('circuit x3, 40/20'))).toEqual([['no-moves', 'circuit x3, 40/20']]);
  });

  test.each<readonly [readonly string[], readonly string[]]>([
    [['tabata: squats, burpees'], ['tabata (8 × 20/10)', 'bodyweight squat', 'burpee']],
    [['EMOM 10: 8 push ups, 12 squats'], ['emom 10', '8 push-up', '12 bodyweight squat']],
    [
      ['circuit x3 40/20: goblet squat 12kg, rest 15, side plank, split sides'],
      ['circuit x3, 40/20', 'goblet squat 12kg, rest 15', 'side plank split sides'],
    ],
    [['Core finisher x2 30/10: plank, heel taps'], ['finisher (Core) x2, 30/10', 'plank', 'heel tap']],
    [
      ['8 min amrap: 10 burpees + 15 sit ups (slow, low)', '5 squats'],
      ['amrap 8:00', '10 burpee + 15 sit-up (slow, low)', '5 bodyweight squat'],
    ],
  ])('moves behind a colon are letters: %j', (lines, printed) => {
    const text = classOf(...lines);
    expect(problemsOf(text)).toEqual([]);
    expect(linesOf(text)).toEqual(printed);
  });

  test('a line with work and rest is no item of a warm-up', () => {
    const text = classOf('warm-up 5', 'Superset A x3 40/20', 'squat jump', 'circuit x3, 40/20', 'burpee');
    expect(problemsOf(text)).toEqual([['unknown-words', 'Superset A x3 40/20']]);
  });

  test('a move whose name holds a block word, without its numbers, stays one', () => {
    expect(problemsOf(classOf('circuit x3, 40/20', 'slow station squat'))).toEqual([
      ['unknown-move', 'slow station squat'],
    ]);
  });

  test('a slip behind the colon is told where it stands', () => {
    expect(problemsOf(classOf('tabata: squats, goblin squash'))).toEqual([['unknown-move', 'goblin squash']]);
    expect(problemsOf(classOf('circuit: legs 40/20', 'burpee'))).toEqual([
      ['number-needed', 'circuit'],
      ['unknown-words', 'legs'],
    ]);
  });

  test('a rest whose length stands in front is one, between rounds too', () => {
    const text = classOf(
      'circuit x3 40/20',
      'burpee',
      '1 min rest between rounds',
      '90s rest',
      'amrap 5',
      '9 squats',
    );
    expect(problemsOf(text)).toEqual([]);
    expect(linesOf(text)).toEqual([
      'circuit x3, 40/20, between rounds 60',
      'burpee',
      'rest 90',
      'amrap 5:00',
      '9 bodyweight squat',
    ]);
  });

  test.each<readonly [string, string, unknown]>([
    ['song 5: lunges', 'song 5:00: lunge', { code: 'read-as', read: '5', as: '5:00' }],
    ['song 225: lunges', 'song 3:45: lunge', { code: 'read-as', read: '225', as: '3:45' }],
  ])('a bare song length is read as a song can be, and said: %s', (line, printed, note) => {
    expect(linesOf(classOf(line))).toEqual([printed]);
    expect(notesOf(classOf(line))).toEqual([note]);
  });

  test('a bare number where seconds and minutes may be meant is said: up to 15 is minutes', () => {
    expect(notesOf(classOf('for time, cap 10', '9 goblet squat'))).toEqual([
      { code: 'read-as', read: 'cap 10', as: '10:00' },
    ]);
    expect(notesOf(classOf('ladder 10 to 1 in 90', 'goblet squat'))).toEqual([
      { code: 'read-as', read: 'in 90', as: '1:30' },
    ]);
  });

  test('more than eight moves in a tabata never come, which is said', () => {
    const moves = ['burpee', 'push-up', 'goblet squat', 'plank', 'glute bridge', 'dead bug', 'superman'];
    const nine = [...moves, 'jumping jack', 'mountain climber'];
    expect(notesOf(classOf('tabata', ...nine))).toEqual([{ code: 'bouts-too-few', moves: 9, bouts: 8 }]);
    expect(notesOf(classOf('tabata', ...moves))).toEqual([]);
  });
});

describe('warm-up, cool-down, mobility, song', () => {
  test.each<readonly [readonly string[], readonly string[]]>([
    [['warm-up 6:00: march, hip hinge'], ['warm-up 6:00: march, hip hinge']],
    [['WU 6', 'march', 'hip hinge'], ['warm-up 6:00: march, hip hinge']],
    [
      ['warm up 6 min: march 30s, easy jog round the room'],
      ['warm-up 6:00: march 30s, easy jog round the room'],
    ],
    [['warmup 6: 10 squats (slow)'], ['warm-up 6:00: bodyweight squat 10 (slow)']],
    [
      ['CD 5', 'say: breathe out'],
      ['cool-down 5:00', 'say: breathe out'],
    ],
    [['cool down to the end'], ['cool-down to the end']],
    [['mobility 5:00: cat-cow'], ['mobility 5:00: cat-cow']],
    [['song 3:45 (drums): jumping jacks'], ['song (drums) 3:45: jumping jack']],
    [['WU 3’', 'march'], ['warm-up 3:00: march']],
    [['5 min warm up: march, squats'], ['warm-up 5:00: march, bodyweight squat']],
    [['3 min cool down'], ['cool-down 3:00']],
  ])('%s', (lines, printed) => {
    const text = classOf(...lines);
    expect(problemsOf(text)).toEqual([]);
    expect(linesOf(text)).toEqual(printed);
  });

  test('unknown words are kept and listed once over the class', () => {
    const text = classOf('warm-up 6:00: easy stroll, shake it out', 'cool-down 5:00: easy stroll');
    expect(notesOf(text)).toEqual([{ code: 'words-kept', words: ['easy stroll', 'shake it out'] }]);
  });

  test('times inside that differ from the length are said', () => {
    expect(notesOf(classOf('warm-up 6:00: march 60s, hip hinge 60s'))).toEqual([
      { code: 'inside-times', sumSeconds: 120, blockSeconds: 360 },
    ]);
    expect(notesOf(classOf('warm-up 6:00: march 60s, hip hinge'))).toEqual([]);
  });

  test.each([
    ['warm-up', [['number-needed', 'warm-up']]],
    ['warm-up to the end', [['not-here', 'to the end']]],
  ])('%s is a problem', (line, problems) => {
    expect(problemsOf(classOf(line, 'march'))).toEqual(problems);
  });

  test('a second cool-down to the end is a problem', () => {
    const text = classOf('cool-down to the end', 'cool-down to the end');
    expect(problemsOf(text)).toEqual([['said-twice', 'cool-down to the end']]);
  });
});

describe('lines of time', () => {
  const circuit = ['circuit x2, 30/15', 'goblet squat'];

  test.each([
    ['rest 60', 'rest 60'],
    ['rest 1:00', 'rest 60'],
    ['rest 2 min', 'rest 120'],
    ['rest 0', 'rest 0'],
    ['rest 3s', 'rest 3s'],
    ['rest 60, explain', 'rest 60, explain'],
    ['water 60', 'water 60'],
    ['demo 45', 'explain 45'],
    ['setup 30', 'set-up 30'],
    ['clear-up 30', 'clear-up 30'],
  ])('%s', (line, printed) => {
    const text = classOf(...circuit, line, 'cool-down 5:00');
    expect(problemsOf(text)).toEqual([]);
    expect(linesOf(text)).toEqual([...circuit, printed, 'cool-down 5:00']);
  });

  test('a plain rest is always told', () => {
    expect(notesOf(classOf(...circuit, 'rest 60', 'emom 4', '8 push-up'))).toEqual([
      { code: 'rest-once', seconds: 60, before: 'emom' },
    ]);
  });

  test('rest each round under a circuit is its rest between rounds', () => {
    expect(linesOf(classOf(...circuit, 'rest 60 each round'))).toEqual([
      'circuit x2, 30/15, between rounds 60',
      'goblet squat',
    ]);
  });

  test.each<readonly [readonly string[], readonly (readonly [string, string])[]]>([
    [['rest 60', ...circuit], [['misplaced-time', 'rest 60']]],
    [['water 60', ...circuit], [['misplaced-time', 'water 60']]],
    [[...circuit, 'rest 60'], [['misplaced-time', 'rest 60']]],
    [[...circuit, 'water 60'], [['misplaced-time', 'water 60']]],
    [['clear-up 60', ...circuit], [['misplaced-time', 'clear-up 60']]],
    [[...circuit, 'explain 60'], [['misplaced-time', 'explain 60']]],
    [['explain 60', 'set-up 30', ...circuit, 'clear-up 60'], []],
    [[...circuit, 'rest 3', 'cool-down 5'], [['unit-needed', '3']]],
    [[...circuit, 'rest', 'cool-down 5'], [['number-needed', 'rest']]],
    [[...circuit, 'rest 60', 'push-up', 'cool-down 5'], [['line-under-time', 'push-up']]],
    [['straight x2, 30/15', 'push-up', 'rest 60 each round'], [['not-here', 'rest 60 each round']]],
    [['circuit x2, 30/15', 'rest 60 each round', 'push-up'], [['each-round-not-last', 'rest 60 each round']]],
    [['push-up', ...circuit], [['line-before-block', 'push-up']]],
    [['circuit x2, 30/15', 'say: brace', 'push-up'], [['say-without-letter', 'say: brace']]],
  ])('%s', (lines, problems) => {
    expect(problemsOf(classOf(...lines))).toEqual(problems);
  });
});
