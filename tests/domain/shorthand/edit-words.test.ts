import { describe, expect, test } from 'vitest';
import { looksLikeClass, looksLikeEdit, nearestEdit } from '../../../domain/shorthand/edit-words.ts';
import { context } from './reading.ts';

describe('what a message is', () => {
  test.each([
    'swap B1 front squat',
    'Swap B1 with C1',
    'drop D',
    'cut finisher',
    'rest B 15',
    'rest after C 60',
    'rest 60 after C',
    'easier B1',
    'work A2 45',
    'cool-down to the end',
    'warm-up 6:00',
    'slot 50',
    '50 min',
    '18 now',
    'level 2',
    'kit bands',
    'add amrap 6 after C\n10 burpee\npush-up\ndrop A',
    'change B1 to front squat\nsomething else',
  ])('%s is an edit', (text) => {
    expect(looksLikeEdit(text)).toBe(true);
  });

  test.each([
    '',
    'hello',
    'rest 60',
    'goblet squat',
    'Row & Squat, 40 min\ncircuit x3, 40/20\ngoblet squat',
    'warm-up 6:00\nmarch',
    'kit: mats\ncircuit x3, 40/20\ngoblet squat',
    'level 2 strength, 45 min',
    'easier said than done',
  ])('%s is none', (text) => {
    expect(looksLikeEdit(text)).toBe(false);
  });

  test.each([
    ['Class, 45 min\ncircuit x3, 40/20\ngoblet squat', true],
    ['circuit x3, 40/20\ngoblet squat', true],
    ['hello\nthere', false],
    ['goblet squat', false],
    ['a\n'.repeat(9_000), false],
  ])('a class has a block and its lines (%#)', (text, isClass) => {
    expect(looksLikeClass(text, context)).toBe(isClass);
  });

  test.each([
    ['swpa B1 front squat', 'swap B1 front squat'],
    ['drpo D', 'drop D'],
    ['B1 front squat', 'swap B1 front squat'],
    ['B heavy', 'weight B heavy'],
    ['C1 alternating', 'sides C1 alternating'],
    ['C rest 15', 'rest C 15'],
    ['B1 tempo 3-1-1-0', 'tempo B1 3-1-1-0'],
    ['4 rounds E', 'rounds E x4'],
    ['E 4 rounds', 'rounds E x4'],
    ['C 10 reps', 'reps C 10'],
    ['amrap to 6', 'change amrap to 6'],
    ['make the circuit x4', 'change circuit to x4'],
    ['amrap 6', undefined],
    ['swpa A plank\ndrop B', 'swap A plank; drop B'],
    ['drop B\n4 rounds E\nB1 heavy', 'drop B; rounds E x4; weight B1 heavy'],
    ['drop B\na squat would be nice', undefined],
    ['drop B\ndrop C', undefined],
    ['a squat would be nice', undefined],
    ['hello', undefined],
    ['drop D', undefined],
  ])('%s is nearly %s', (text, edit) => {
    expect(nearestEdit(text)).toBe(edit);
  });
});
