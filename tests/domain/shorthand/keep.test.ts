import { describe, expect, test } from 'vitest';
import { labelledLetters } from '../../../domain/plan/labels.ts';
import type { Plan } from '../../../domain/plan/plan.ts';
import { allIds } from '../../../domain/shorthand/edits/plan-lines.ts';
import { excerptOf } from '../../../domain/shorthand/excerpt.ts';
import { keepText } from '../../../domain/shorthand/keep-text.ts';
import { printPlan } from '../../../domain/shorthand/print-plan.ts';
import { context, problemsOf, read } from './reading.ts';

describe('the draft as kept', () => {
  test('entities, line ends and no-break spaces are made plain, nothing else', () => {
    expect(keepText('A &amp; B &lt;3&gt;\r\nC\rD\u00a0E “F” *G*')).toBe('A & B <3>\nC\nD E “F” *G*');
  });

  test('spans count in it, also behind a decoded entity and a wide character', () => {
    expect(problemsOf('Row &amp; 💪, 45 min\r\ncircuit x3, 40/20\r\ngoblet squat + goblin squash')).toEqual([
      ['unknown-move', 'goblin squash'],
    ]);
  });

  test('every problem names its line', () => {
    const { problems } = read('X, 45 min\n\ncircuit x3, 40/20\ngoblin squash\ngoblet squat\npress');
    expect(problems.map(({ line, code, read: words }) => [line, code, words])).toEqual([
      [4, 'unknown-move', 'goblin squash'],
      [6, 'ambiguous-move', 'press'],
    ]);
  });

  test('a message over the limit is one problem at its first character', () => {
    const text = `${'a'.repeat(8_000)}b`;
    expect(read(text)).toEqual({
      notes: [],
      problems: [
        {
          code: 'message-too-long',
          line: 1,
          span: { start: 0, end: 1 },
          read: 'a',
          length: 8_001,
          most: 8_000,
        },
      ],
    });
  });
});

describe('limits', () => {
  const moves = (count: number) => Array.from({ length: count }, () => 'plank');

  test.each<readonly [string, readonly string[], readonly string[]]>([
    ['20 blocks', Array.from({ length: 20 }, () => 'amrap 1\nplank'), []],
    ['21 blocks', Array.from({ length: 21 }, () => 'amrap 1\nplank'), ['too-many']],
    ['30 letters', ['circuit x1, 10/0', ...moves(30)], []],
    ['31 letters', ['circuit x1, 10/0', ...moves(31)], ['too-many']],
    ['8 moves', ['circuit x1, 10/0', moves(8).join(' + ')], []],
    ['9 moves', ['circuit x1, 10/0', moves(9).join(' + ')], ['too-many']],
    [
      '9 joined moves',
      ['circuit x1, 10/0', ...moves(9).map((move, at) => `A${at + 1} ${move}`)],
      ['too-many'],
    ],
    ['180 minutes', ['amrap 180', 'plank'], []],
    ['over 180 minutes', ['amrap 180', 'plank', 'amrap 1', 'plank'], ['out-of-range']],
    ['50 rounds', ['circuit x50, 10/0', 'plank'], []],
  ])('%s', (_, lines, codes) => {
    expect(read(['X, 45 min', ...lines].join('\n')).problems.map(({ code }) => code)).toEqual(codes);
  });
});

describe('ids', () => {
  const text =
    'X, 45 min\nwarm-up 5: march\ncircuit x3, 40/20\ngoblet squat\npush-up + plank\nfinisher, 60/0\nburpee';

  function planOf(words: string, previousPlan?: Plan): Plan {
    const { plan } = read(words, previousPlan === undefined ? {} : { previousPlan });
    if (plan === undefined) throw new Error('the class must read');
    return plan;
  }

  test('are unique and the same for the same text', () => {
    const ids = allIds(planOf(text));
    expect(new Set(ids).size).toBe(ids.length);
    expect(allIds(planOf(text))).toEqual(ids);
  });

  test('stay with lines that stand again', () => {
    const before = planOf(text);
    expect(allIds(planOf(text, before))).toEqual(allIds(before));
    const after = planOf(
      text
        .replace('goblet squat', 'superman\ngoblet squat heavy')
        .replace('40/20', '45/15')
        .replace('burpee', 'plank'),
      before,
    );
    const idOf = (plan: Plan, label: string) =>
      labelledLetters(plan).find((each) => each.label === label)?.letter.id;
    expect(idOf(after, 'B')).toBe(idOf(before, 'A'));
    expect(idOf(after, 'C')).toBe(idOf(before, 'B'));
    expect(allIds(before)).not.toContain(idOf(after, 'A'));
    expect(after.blocks.map(({ id }) => id)).toEqual(before.blocks.map(({ id }) => id));
    expect(new Set(allIds(after)).size).toBe(allIds(after).length);
  });
});

describe('a studio’s own names', () => {
  test('are read like the trade’s', () => {
    const settings = { ...context.settings, ownNames: { thrones: 'goblet-squat' } };
    const { plan, problems } = read('X, 45 min\namrap 8\n10 thrones', { settings });
    expect(problems).toEqual([]);
    expect(plan && printPlan(plan).split('\n').at(-1)).toBe('10 goblet squat');
  });
});

describe('excerpts', () => {
  test('show the line with the place in it', () => {
    const text = 'X, 45 min\ncircuit x3, 40/20\ngoblin squash + dead bug';
    expect(excerptOf(text, { start: 28, end: 41 })).toEqual({
      line: 3,
      lineText: 'goblin squash + dead bug',
      caretStart: 0,
      caretLength: 13,
    });
  });

  test('of a long line are cut around the place', () => {
    const text = `${'word '.repeat(30)}HERE ${'more '.repeat(30)}`;
    const excerpt = excerptOf(text, { start: 150, end: 154 });
    expect(excerpt.lineText.length).toBeLessThanOrEqual(60);
    expect(excerpt.lineText.slice(excerpt.caretStart, excerpt.caretStart + excerpt.caretLength)).toBe('HERE');
    expect([excerpt.lineText.at(0), excerpt.lineText.at(-1)]).toEqual(['…', '…']);
  });

  test.each([
    { start: 0, end: 0 },
    { start: 5, end: 900 },
    { start: 900, end: 901 },
  ])('hold for any span: %o', (span) => {
    const excerpt = excerptOf('a b c d e\nf', span);
    expect(excerpt.caretLength).toBeGreaterThan(0);
    expect(excerpt.caretStart).toBeLessThanOrEqual(excerpt.lineText.length);
  });
});

describe('the contract’s example', () => {
  test('is its own canonical form', () => {
    const text = [
      'Row & Squat, 40 min, level 2, 12 people',
      'kit: dumbbells, mats',
      'warm-up 6:00: march, hip hinge, arm circle',
      'straight x3, 40/20',
      'bent-over row',
      'goblet squat',
      'rest 60, explain',
      'emom 10',
      '8 push-up',
      '10 dead bug',
      'rest 60',
      'circuit x3, 30/15',
      'reverse lunge alternating',
      'dumbbell floor press + glute bridge',
      '? core',
      'cool-down to the end',
    ].join('\n');
    const { plan, problems } = read(text);
    expect(problems).toEqual([]);
    expect(plan && printPlan(plan)).toBe(text);
  });
});
