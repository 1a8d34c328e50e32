import { describe, expect, test } from 'vitest';
import { classOf, linesOf, notesOf, problemsOf } from './reading.ts';

const circuit = 'circuit x3, 40/20';

function circuitOf(...lines: readonly string[]): string {
  return classOf(circuit, ...lines);
}

describe('moves and what stands beside them', () => {
  test.each<readonly [string, string]>([
    ['goblet squat', 'goblet squat'],
    ['goblet squat 45s', 'goblet squat 45s'],
    ['goblet squat 0:45', 'goblet squat 45s'],
    ['goblet squat 60 sec', 'goblet squat 60s'],
    ['goblet squat 1 min', 'goblet squat 60s'],
    ['10 kettlebell swings', '10 kettlebell swing'],
    ['kettlebell swing x10', '10 kettlebell swing'],
    ['kettlebell swing 10 reps', '10 kettlebell swing'],
    ['goblet squat tempo 3-1-1-0', 'goblet squat tempo 3-1-1-0'],
    ['goblet squat tempo 3-1-x-0', 'goblet squat tempo 3-1-1-0'],
    ['clamshell L+R', 'clamshell each side'],
    ['clamshell left and right', 'clamshell each side'],
    ['floor press 2x10kg', 'dumbbell floor press 10kg'],
    ['floor press 2 x 10 kg 8 reps', '8 dumbbell floor press 10kg'],
    ['goblet squat tempo 3110', 'goblet squat tempo 3-1-1-0'],
    ['goblet squat tempo 31X0 12kg', 'goblet squat tempo 3-1-1-0 12kg'],
    ['goblet squat tempo 3 1 1 0 12kg', 'goblet squat tempo 3-1-1-0 12kg'],
    ['goblet squat tempo 3 0 1 0, 8 reps', '8 goblet squat tempo 3-0-1-0'],
    ['reverse lunge each side', 'reverse lunge each side'],
    ['reverse lunge e/s', 'reverse lunge each side'],
    ['reverse lunge L/R', 'reverse lunge each side'],
    ['reverse lunge split sides', 'reverse lunge split sides'],
    ['alt reverse lunge', 'reverse lunge alternating'],
    ['reverse lunge right', 'reverse lunge right'],
    ['left reverse lunge', 'reverse lunge left'],
    ['dead bug', 'dead bug'],
    ['dead bug alternating', 'dead bug'],
    ['goblet squat 12kg', 'goblet squat 12kg'],
    ['goblet squat 25 lbs', 'goblet squat 25lb'],
    ['heavy goblet squat', 'goblet squat heavy'],
    ['goblet squat @16kg', 'goblet squat 16kg'],
    ['goblet squat rpe 8', 'goblet squat rpe 8'],
    ['push-up easier knee push-up', 'push-up easier knee push-up'],
    [
      'push-up, easier knee push-ups, harder hands raised high',
      'push-up easier knee push-up harder hands raised high',
    ],
    ['push-up or plank 30s', 'push-up 30s or plank'],
    ["farmer's carry 20m", "farmer's carry 20m"],
    ['goblet squat (elbows in)', 'goblet squat (elbows in)'],
    ['goblet squat, heavy, 45s, (slow + deep), 8 reps', '8 goblet squat 45s heavy (slow + deep)'],
    ['goblet squat, rest 15', 'goblet squat, rest 15'],
    ['goblet squat rest 15', 'goblet squat, rest 15'],
    ['goblet squat + push-up, rest 15, burnout', 'goblet squat + push-up, rest 15, burnout'],
    [
      'reverse lunge + glute bridge, whole set each side',
      'reverse lunge + glute bridge, whole set each side',
    ],
    ['by round: goblet squat, squat pulse, squat jump', 'by round: goblet squat, squat pulse, squat jump'],
    [
      'by round: goblet squat, squat pulse, squat jump, rest 30',
      'by round: goblet squat, squat pulse, squat jump, rest 30',
    ],
    ['"goblin squash" 45s', '"goblin squash" 45s'],
    ['“goblin squash + jump” heavy', '"goblin squash + jump" heavy'],
    ['?', '?'],
    ['? row', '? row'],
    ['? hinge no kit standing 45s', '? hinge no kit standing 45s'],
    ['8 ? lower body', '8 ? lower body'],
  ])('%s', (line, printed) => {
    expect(problemsOf(circuitOf(line))).toEqual([]);
    expect(linesOf(circuitOf(line))).toEqual([circuit, printed]);
  });

  test.each<readonly [string, readonly (readonly [string, string])[]]>([
    ['goblin squash + dead bug', [['unknown-move', 'goblin squash']]],
    ['press', [['ambiguous-move', 'press']]],
    ['goblet squat 10', [['unit-needed', '10']]],
    ['goblet squat @16', [['sign-asked', '@16']]],
    ['goblet squat @8', [['sign-asked', '@8']]],
    ['goblet squat 3x10', [['not-here', '3x10']]],
    ['plank each side', [['sides-not-possible', 'each side']]],
    ['9 reverse lunge', [['odd-reps', '9 reverse lunge']]],
    ['goblet squat, push-up', [['two-moves', 'goblet squat, push-up']]],
    ['? sideways', [['unknown-wish', 'sideways']]],
    ['45s', [['name-needed', '45s']]],
    ['by round: goblet squat, squat jump', [['by-round-mismatch', 'by round: goblet squat, squat jump']]],
    ['goblet squat 45s 50s', [['said-twice', '50s']]],
    ['goblet squat 1801s', [['out-of-range', '1801s']]],
    ['goblet squat 0s', [['out-of-range', '0s']]],
    ['goblet squat, rest 1801', [['out-of-range', 'rest 1801']]],
    ['goblet squat rpe 11', [['out-of-range', 'rpe 11']]],
    ['goblin squash heavy 10 (x)', [['unknown-move', 'goblin squash']]],
    ['squat & row', [['ambiguous-move', 'row']]],
  ])('%s is a problem', (line, problems) => {
    expect(problemsOf(circuitOf(line))).toEqual(problems);
  });

  test.each<readonly [string, readonly string[]]>([
    ['goblet squat', [circuit, 'goblet squat']],
    ['row', []],
  ])('one bad line never loses the others: %s', (line, printed) => {
    expect(linesOf(circuitOf('goblin squash', line))).toEqual(printed);
  });

  test.each<readonly [string, readonly unknown[]]>([
    ['goblet squat 20', [{ code: 'bare-seconds', seconds: 20 }]],
    ['gobelt squat', [{ code: 'read-as', read: 'gobelt squat', as: 'goblet squat' }]],
    ['reverse lunge', [{ code: 'sides-assumed', move: 'reverse lunge' }]],
    ['goblet squat tempo 3-1-1', [{ code: 'last-pause-assumed' }]],
    ['goblet squat tempo 311 8kg', [{ code: 'last-pause-assumed' }]],
    ['goblet squat tempo 3 1 1 8kg', [{ code: 'last-pause-assumed' }]],
    ['push-up easier hands raised', [{ code: 'option-kept', text: 'hands raised' }]],
    ['goblet squat & push-up', [{ code: 'back-to-back', sign: '&', moves: ['goblet squat', 'push-up'] }]],
    ['goblet squat and push-up', [{ code: 'back-to-back', sign: 'and', moves: ['goblet squat', 'push-up'] }]],
    ['goblet squat / push-up', [{ code: 'back-to-back', sign: '/', moves: ['goblet squat', 'push-up'] }]],
    ['goblet squat &amp; push-up', [{ code: 'back-to-back', sign: '&', moves: ['goblet squat', 'push-up'] }]],
    ['goblet squat', []],
  ])('%s is said', (line, notes) => {
    expect(notesOf(circuitOf(line))).toEqual(notes);
  });
});

describe('what the block makes of a line', () => {
  test.each<readonly [string, string, readonly (readonly [string, string])[]]>([
    ['stations x2, 45/15', 'reverse lunge each side', [['sides-break-frame', 'each side']]],
    ['emom 10, 20 work', 'reverse lunge each side', [['sides-break-frame', 'each side']]],
    ['tabata', 'reverse lunge each side', [['sides-break-frame', 'each side']]],
    [
      'stations x2, 45/15',
      'reverse lunge, whole set each side',
      [['sides-break-frame', 'whole set each side']],
    ],
    ['straight x2, 45/15', 'reverse lunge each side', []],
    ['tabata', 'burpee, rest 15', [['not-here', 'rest 15']]],
    ['emom 10, 20 work', 'burpee, rest 15', [['not-here', 'rest 15']]],
    ['amrap 8', 'burpee, rest 15', [['not-here', 'rest 15']]],
    ['for time, cap 10:00', 'burpee, rest 15', [['not-here', 'rest 15']]],
    ['ladder 10 to 1', 'burpee, rest 15', [['not-here', 'rest 15']]],
    ['tabata', 'plank 45s', [['not-here', 'plank 45s']]],
    ['tabata', 'plank 20s', []],
    ['emom 10', 'goblet squat', [['time-or-reps-needed', 'goblet squat']]],
    ['emom 10', '30 goblet squat', [['interval-too-short', '30 goblet squat']]],
    ['emom 10, 40 work', 'goblet squat + push-up', [['interval-too-short', 'goblet squat + push-up']]],
    ['emom 10, 30 work', 'goblet squat + push-up', []],
    ['straight x3', 'goblet squat', [['time-or-reps-needed', 'goblet squat']]],
    ['straight x3', 'goblet squat 45s', []],
    ['straight x3, 40/20', 'goblet squat', []],
    ['amrap 8', 'goblet squat', []],
    ['amrap 8', 'by round: goblet squat, push-up', [['not-here', 'by round: goblet squat, push-up']]],
  ])('%s: %s', (block, line, problems) => {
    expect(problemsOf(classOf(block, line))).toEqual(problems);
  });

  test.each([
    ['amrap 8', 'push-up 12', '12 push-up'],
    ['ladder 10 to 1', 'push-up 12', '12 push-up'],
    ['straight x3', 'push-up 12', '12 push-up'],
    ['straight x3, 40/20', 'push-up 20', 'push-up 20s'],
  ])('a bare number behind a name in %s', (block, line, printed) => {
    expect(linesOf(classOf(block, line)).at(-1)).toBe(printed);
  });

  test('a distance alone takes the interval of an EMOM, which is said', () => {
    const text = classOf('emom 10', "farmer's carry 20m");
    expect(linesOf(text)).toEqual(['emom 10', "farmer's carry 60s 20m"]);
    expect(notesOf(text)).toEqual([{ code: 'distance-fills-interval', seconds: 60 }]);
  });
});

describe('typed letters', () => {
  test.each<readonly [readonly string[], readonly string[]]>([
    [
      ['A1 goblet squat', 'A2 push-up', 'B1 plank'],
      ['goblet squat + push-up', 'plank'],
    ],
    [
      ['1a) goblet squat', '1b. push-up'],
      ['goblet squat', 'push-up'],
    ],
    [['1a: goblet squat', '2a: push-up'], ['goblet squat + push-up']],
    [
      ['A. goblet squat', 'B. push-up'],
      ['goblet squat', 'push-up'],
    ],
    [['A1 goblet squat, rest 15', 'A2 push-up'], ['goblet squat + push-up, rest 15']],
    [
      ['A1 goblet squat', 'say: knees out', 'A2 push-up'],
      ['goblet squat + push-up', 'say: knees out'],
    ],
    [
      ['30s plank', '5m bear crawl'.replace('5m', '20m')],
      ['plank 30s', 'bear crawl 20m'],
    ],
  ])('%s', (lines, printed) => {
    expect(linesOf(circuitOf(...lines)).slice(1)).toEqual(printed);
  });

  test('joining is said, and so is a rest that is left out', () => {
    expect(notesOf(circuitOf('A1 goblet squat, rest 15', 'A2 push-up, rest 60'))).toEqual([
      { code: 'joined', labels: ['A1', 'A2'] },
      { code: 'joined-rests', keptSeconds: 60, droppedSeconds: [15] },
    ]);
  });
});

describe('what is forgiven', () => {
  test.each<readonly [string, string]>([
    ['GOBLET  SQUATS', 'goblet squat'],
    ['• goblet squat', 'goblet squat'],
    ['- goblet squat', 'goblet squat'],
    ['1. goblet squat', 'goblet squat'],
    ['2) goblet squat', 'goblet squat'],
    ['> goblet squat', 'goblet squat'],
    ['*goblet squat*', 'goblet squat'],
    ['push up', 'push-up'],
    ['pushup', 'push-up'],
    ['squat goblet', 'goblet squat'],
    ['goblet\u00a0squat', 'goblet squat'],
    ['goblet squat – heavy', 'goblet squat heavy'],
    ['body-weight squat', 'bodyweight squat'],
    ['goblet squat.', 'goblet squat'],
    ['goblet squat 💪', 'goblet squat'],
  ])('%s', (line, printed) => {
    expect(problemsOf(circuitOf(line))).toEqual([]);
    expect(linesOf(circuitOf(line))).toEqual([circuit, printed]);
  });

  test('a semicolon breaks a line, blank lines say nothing', () => {
    expect(linesOf('Class, 45 min; circuit x3, 40/20; goblet squat;;push-up\n\n')).toEqual([
      circuit,
      'goblet squat',
      'push-up',
    ]);
  });
});
