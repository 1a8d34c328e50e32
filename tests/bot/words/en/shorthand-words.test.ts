import { describe, expect, test } from 'vitest';
import { changeText } from '../../../../bot/words/en/change-words.ts';
import { noteText } from '../../../../bot/words/en/note-words.ts';
import { problemText } from '../../../../bot/words/en/problem-words.ts';
import { editPlan } from '../../../../domain/shorthand/edit-plan.ts';
import { excerptOf } from '../../../../domain/shorthand/excerpt.ts';
import { classOf, context, read } from '../../../domain/shorthand/reading.ts';

describe('a problem says what was read, where, and what would work', () => {
  test('with the line and a caret under it', () => {
    const text = classOf('circuit x3, 40/20', 'plank', 'goblet squat', 'push-up', 'goblin squash + dead bug');
    const [problem] = read(text).problems;
    if (problem === undefined) throw new Error('the line must not read');
    expect(problemText(problem, excerptOf(text, problem.span)).split('\n').slice(1)).toEqual([
      '  goblin squash + dead bug',
      '  ^^^^^^^^^^^^^',
    ]);
    expect(problemText(problem)).toMatch(
      /^line 6: I don't know the move "goblin squash"\. Did you mean goblet squat/,
    );
  });

  test('with the weekday a date falls on', () => {
    const [problem] = read('Strong, 45 min, Tue 4 Mar 2026 18:30\ncircuit x3, 40/20\nplank').problems;
    if (problem === undefined) throw new Error('the line must not read');
    expect(problemText(problem)).toBe(
      'line 1: "Tue 4 Mar 2026 18:30" names two days: that date is Wed 4 Mar 2026. Write the one you mean.',
    );
  });

  test.each<readonly [readonly string[], string]>([
    [['circuit', 'plank'], 'line 2: "circuit" needs its numbers. This works: circuit x3, 40/20'],
    [['tabata 8', 'plank'], 'line 2: "8" may mean two things. Write tabata or tabata x8.'],
    [
      ['circuit x3, 40/20', 'goblet squat @8'],
      'line 3: "@8" may be a weight or an effort. Write rpe 8 or 8kg.',
    ],
    [
      ['stations x2, 45/15', 'reverse lunge each side'],
      'line 3: "each side" takes twice the time, which a stations block does not have. Write split sides or alternating.',
    ],
    [
      ['emom 10', '30 goblet squat tempo 2-0-1-0'],
      'line 3: this needs 1:30, the interval is 1:00. Fewer reps, or a longer interval: every 1:30 x6',
    ],
    [
      ['rest 60', 'emom 4', '8 burpee'],
      `line 2: a class can't begin with rest. Take it out, or put a block before it.`,
    ],
    [['circuit x51, 40/20', 'plank'], 'line 2: "x51" is outside what I can plan: rounds is 1 to 50.'],
    [
      ['circuit x3, 40/20', 'goblet squat 3x10'],
      'line 3: sets and reps on a line go in straight sets only. Write 10 goblet squat.',
    ],
  ])('%s', (lines, sentence) => {
    expect(read(classOf(...lines)).problems.map((problem) => problemText(problem))).toEqual([sentence]);
  });

  test('of an edit, too', () => {
    const { plan } = read(classOf('circuit x3, 40/20', 'goblet squat'));
    if (plan === undefined) throw new Error('the class must read');
    expect(editPlan(plan, 'drop Z', context).problems.map((problem) => problemText(problem))).toEqual([
      'line 1: there is no Z: the letters run from A to A.',
    ]);
  });

  test('long words are cut for a phone', () => {
    const text = classOf('circuit x3, 40/20', 'wobble '.repeat(60));
    const [problem] = read(text).problems;
    expect(problem && problemText(problem).length).toBeLessThan(260);
  });
});

test.each<readonly [readonly string[], readonly string[]]>([
  [
    ['circuit x3, 40/20', 'A1 gobelt squat', 'A2 push-up 20', 'rest 60', 'emom 4', '8 burpee'],
    [
      'gobelt squat read as goblet squat',
      '20 read as 20 s',
      'A1 + A2 read as a pair',
      'rest 60 once, before the EMOM',
    ],
  ],
  [
    ['warm-up 6:00: march 60s, wiggle 30s', 'circuit x3, 40/20', 'goblet squat & push-up', 'reverse lunge'],
    [
      'The times inside add up to 1:30; the block stays 6:00',
      'goblet squat & push-up read as back to back',
      'reverse lunge: half the time each side (split sides)',
      'Kept as words on the sheet: wiggle',
    ],
  ],
])('what was assumed is said in short: %s', (lines, sentences) => {
  expect(read(classOf(...lines)).notes.map(noteText)).toEqual(sentences);
});

test.each<readonly [string, readonly string[]]>([
  ['18 now', ['people: not said → 18']],
  ['swap A front squat', ['A: goblet squat → front squat']],
  ['rounds A x4', ['circuit x3, 40/20 → circuit x4, 40/20']],
  ['drop A', ['A dropped: goblet squat', 'B is now A, C is now B']],
  ['add plank after B', ['C added: plank', 'C is now D']],
  ['cut finisher', ['dropped: finisher, 60/0 · C burpee']],
  [
    'swap B front squat',
    ['B: reverse lunge alternating → front squat', 'B: alternating left out, the new move has no use for it'],
  ],
])('a change is told before → after: %s', (edit, sentences) => {
  const { plan } = read(
    classOf('circuit x3, 40/20', 'goblet squat', 'reverse lunge alternating', 'finisher, 60/0', 'burpee'),
  );
  if (plan === undefined) throw new Error('the class must read');
  expect(editPlan(plan, edit, context).changes.map(changeText)).toEqual(sentences);
});
