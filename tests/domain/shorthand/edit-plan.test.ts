import { describe, expect, test } from 'vitest';
import { labelledLetters } from '../../../domain/plan/labels.ts';
import type { Plan } from '../../../domain/plan/plan.ts';
import { type Change, editPlan } from '../../../domain/shorthand/edit-plan.ts';
import { printPlan } from '../../../domain/shorthand/print-plan.ts';
import { context, read } from './reading.ts';

const text = [
  'Row & Squat, 40 min, level 2, 12 people',
  'kit: dumbbells, mats',
  'warm-up 6:00: march',
  'straight x3, 40/20',
  'bent-over row, rest 30',
  'goblet squat 45s heavy (elbows in)',
  'rest 60, explain',
  'emom 10',
  '8 push-up easier knee push-up',
  '10 dead bug',
  'rest 60',
  'circuit x3, 30/15',
  'reverse lunge alternating',
  'dumbbell floor press + glute bridge',
  'finisher, 60/0',
  'burpee',
  'cool-down to the end',
];

function base(): Plan {
  const { plan, problems } = read(text.join('\n'));
  expect(problems).toEqual([]);
  if (plan === undefined) throw new Error('the class must read');
  return plan;
}

/** Lines that stand only before, and only after the edit. */
function difference(edit: string): { readonly gone: readonly string[]; readonly came: readonly string[] } {
  const { plan, problems } = editPlan(base(), edit, context);
  expect(problems).toEqual([]);
  const after = plan === undefined ? [] : printPlan(plan).split('\n');
  const left = [...text];
  const came = after.filter((line) => {
    const at = left.indexOf(line);
    if (at !== -1) left.splice(at, 1);
    return at === -1;
  });
  return { gone: left, came };
}

function problemsIn(edit: string): readonly string[] {
  return editPlan(base(), edit, context).problems.map(({ code }) => code);
}

test('an AMRAP, for time and a ladder get another length', () => {
  const { plan } = read(
    'Class, 45 min\namrap 6\n10 burpee\nfor time, cap 8:00\n9 burpee\nladder 3 to 1\nburpee',
  );
  const edited = plan && editPlan(plan, 'block A 8\nblock B 7:30\nblock C 2:00', context).plan;
  expect(edited && printPlan(edited).split('\n')).toEqual([
    'Class, 45 min',
    'amrap 8:00',
    '10 burpee',
    'for time, cap 7:30',
    '9 burpee',
    'ladder 3 to 1, in 2:00',
    'burpee',
  ]);
});

describe('the only block of its kind, by its word', () => {
  const { plan } = read(
    [
      'Class, 60 min',
      'warm-up 6:00',
      'circuit x3, 40/20',
      'push-up',
      'rest 60',
      'amrap 8',
      '10 burpee',
      'emom 6',
      '8 push-up',
      'ladder 3 to 1',
      'burpee',
      'cool-down to the end',
    ].join('\n'),
  );
  const printed = (edit: string) => {
    const edited = plan && editPlan(plan, edit, context);
    return edited?.problems.length === 0 && edited.plan
      ? printPlan(edited.plan).split('\n')
      : edited?.problems;
  };

  test.each([
    ['change amrap to 6', 'amrap 6:00'],
    ['change the AMRAP to 6:30', 'amrap 6:30'],
    ['change emom to 12', 'emom 12'],
    ['change circuit to 4 rounds', 'circuit x4, 40/20'],
    ['change circuit to x2', 'circuit x2, 40/20'],
    ['replace circuit with 45/15', 'circuit x3, 45/15'],
    ['change ladder to 4:00', 'ladder 3 to 1, in 4:00'],
    ['change warm-up to 7', 'warm-up 7:00'],
    ['change cool-down to 5:00', 'cool-down 5:00'],
    ['change rest to 90', 'rest 90'],
  ])('%s', (edit, line) => {
    expect(printed(edit)).toContain(line);
  });

  test.each([
    ['change circuit to 4', 'edit-incomplete'],
    ['change tabata to x2', 'no-such-block'],
    ['change amrap to x2', 'block-without-numbers'],
    ['change amrap to 45/15', 'block-without-numbers'],
    ['change warm-up to x2', 'block-without-numbers'],
    ['change amrap to 6 burpees', 'edit-incomplete'],
    ['add amrap 4 after A\nchange amrap to 6', 'several-blocks'],
  ])('%s is told', (edit, code) => {
    expect(printed(edit)).toMatchObject([{ code }]);
  });
});

describe('edits', () => {
  test.each<readonly [string, readonly string[], readonly string[]]>([
    ['swap B front squat', ['goblet squat 45s heavy (elbows in)'], ['front squat 45s (elbows in)']],
    [
      'sub B front squat medium',
      ['goblet squat 45s heavy (elbows in)'],
      ['front squat 45s medium (elbows in)'],
    ],
    ['replace A with push-up', ['bent-over row, rest 30'], ['push-up, rest 30']],
    ['change E to goblet squat', ['reverse lunge alternating'], ['goblet squat']],
    ['swap E side plank', ['reverse lunge alternating'], ['side plank alternating']],
    ['swap F1 with F2', ['dumbbell floor press + glute bridge'], ['glute bridge + dumbbell floor press']],
    [
      'swap A with F1',
      ['bent-over row, rest 30', 'dumbbell floor press + glute bridge'],
      ['dumbbell floor press, rest 30', 'bent-over row + glute bridge'],
    ],
    ['swap F push-up + plank', ['dumbbell floor press + glute bridge'], ['push-up + plank']],
    ['add side plank alternating after E', [], ['side plank alternating']],
    ['add plank before A', [], ['plank']],
    ['add amrap 6 after D', [], ['amrap 6:00', '?']],
    ['add amrap 6 after D\n10 burpee\nplank 30s', [], ['amrap 6:00', '10 burpee', 'plank 30s']],
    ['add 6 min amrap after D', [], ['amrap 6:00', '?']],
    [
      'add core finisher 30/10 x2 after D\nplank\nheel taps',
      [],
      ['finisher (core) x2, 30/10', 'plank', 'heel tap'],
    ],
    ['add rest 60 after E', [], ['rest 60']],
    ['drop D', ['10 dead bug'], []],
    ['delete B', ['goblet squat 45s heavy (elbows in)'], []],
    ['drop F2', ['dumbbell floor press + glute bridge'], ['dumbbell floor press']],
    ['cut finisher', ['finisher, 60/0', 'burpee'], []],
    ['remove G', ['finisher, 60/0', 'burpee'], []],
    ['cut emom', ['emom 10', '8 push-up easier knee push-up', '10 dead bug', 'rest 60'], []],
    ['drop C\ndrop D', ['emom 10', '8 push-up easier knee push-up', '10 dead bug', 'rest 60'], []],
    ['drop C and D', ['emom 10', '8 push-up easier knee push-up', '10 dead bug', 'rest 60'], []],
    [
      'drop B, F2, G',
      [
        'goblet squat 45s heavy (elbows in)',
        'dumbbell floor press + glute bridge',
        'finisher, 60/0',
        'burpee',
      ],
      ['dumbbell floor press'],
    ],
    ['drop rest after C', ['rest 60'], []],
    ['move E before A', [], []],
    ['move B after E', ['goblet squat 45s heavy (elbows in)'], ['goblet squat heavy (elbows in)']],
    ['move G before E', ['finisher, 60/0'], []],
    ['rounds A x4', ['straight x3, 40/20'], ['straight x4, 40/20']],
    ['rounds C 12', ['emom 10'], ['emom 12']],
    ['block C 12:00', ['emom 10'], ['emom 12']],
    ['block D 8', ['emom 10'], ['emom 8']],
    ['reps D 12', ['10 dead bug'], ['12 dead bug']],
    ['reps C x6', ['8 push-up easier knee push-up'], ['6 push-up easier knee push-up']],
    ['rest between rounds E 45', ['circuit x3, 30/15'], ['circuit x3, 30/15, between rounds 45']],
    [
      'add amrap 6 after D\n10 burpee\nblock A 45/15',
      ['straight x3, 40/20'],
      ['straight x3, 45/15', 'amrap 6:00', '10 burpee'],
    ],
    ['block A 45/15', ['straight x3, 40/20'], ['straight x3, 45/15']],
    ['work A 45', ['bent-over row, rest 30'], ['bent-over row 45s, rest 30']],
    ['work F 20', ['dumbbell floor press + glute bridge'], ['dumbbell floor press 20s + glute bridge 20s']],
    ['work F2 20', ['dumbbell floor press + glute bridge'], ['dumbbell floor press + glute bridge 20s']],
    ['rest B 15', ['goblet squat 45s heavy (elbows in)'], ['goblet squat 45s heavy (elbows in), rest 15']],
    ['rest after C 90', ['rest 60'], ['rest 90']],
    ['rest after B 45', ['rest 60, explain'], ['rest 45, explain']],
    ['rest after E 45', [], ['rest 45']],
    ['water after E 45', [], ['water 45']],
    ['between rounds E 45', ['circuit x3, 30/15'], ['circuit x3, 30/15, between rounds 45']],
    ['between letters A 45', ['straight x3, 40/20'], ['straight x3, 40/20, between letters 45']],
    ['warm-up 7:00', ['warm-up 6:00: march'], ['warm-up 7:00: march']],
    ['cool-down 5', ['cool-down to the end'], ['cool-down 5:00']],
    ['cool-down to the end', [], []],
    ['sides E split sides', ['reverse lunge alternating'], ['reverse lunge split sides']],
    ['weight B 16kg', ['goblet squat 45s heavy (elbows in)'], ['goblet squat 45s 16kg (elbows in)']],
    [
      'tempo B 3-1-1-0',
      ['goblet squat 45s heavy (elbows in)'],
      ['goblet squat 45s tempo 3-1-1-0 heavy (elbows in)'],
    ],
    ['easier C', ['8 push-up easier knee push-up'], ['8 knee push-up']],
    ['kit bands', ['kit: dumbbells, mats'], ['kit: long bands, mini bands']],
    ['kit: none', ['kit: dumbbells, mats'], ['kit: none']],
    ['18 now', ['Row & Squat, 40 min, level 2, 12 people'], ['Row & Squat, 40 min, level 2, 18 people']],
    ['level 3', ['Row & Squat, 40 min, level 2, 12 people'], ['Row & Squat, 40 min, level 3, 12 people']],
    ['slot 50', ['Row & Squat, 40 min, level 2, 12 people'], ['Row & Squat, 50 min, level 2, 12 people']],
    [
      'title Slow Ember',
      ['Row & Squat, 40 min, level 2, 12 people'],
      ['Slow Ember, 40 min, level 2, 12 people'],
    ],
    [
      'focus lower body',
      ['Row & Squat, 40 min, level 2, 12 people'],
      ['Row & Squat, 40 min, level 2, 12 people, focus lower body'],
    ],
  ])('%s', (edit, gone, came) => {
    expect(difference(edit)).toEqual({ gone, came });
  });

  test('all letters of a message are those of the version it was written on', () => {
    expect(difference('drop A\nswap B front squat\nrest after C 90')).toEqual({
      gone: ['bent-over row, rest 30', 'goblet squat 45s heavy (elbows in)', 'rest 60'],
      came: ['front squat 45s (elbows in)', 'rest 90'],
    });
  });

  test('moves come in the order asked for', () => {
    const { plan } = editPlan(base(), 'move D before C', context);
    const letters = plan === undefined ? [] : labelledLetters(plan);
    expect(letters.slice(2, 4).map(({ letter }) => letter.moves[0]?.reps)).toEqual([10, 8]);
  });

  test.each<readonly [string, readonly string[]]>([
    ['drop Z', ['no-such-letter']],
    ['drop A\nswap A front squat', ['letter-gone']],
    ['swap F front squat', ['one-move-needed']],
    ['weight F heavy', ['one-move-needed']],
    ['swap A goblin squash', ['unknown-move']],
    ['swap A', ['edit-incomplete']],
    ['add plank', ['edit-incomplete']],
    ['move A', ['edit-incomplete']],
    ['rounds A lots', ['edit-incomplete']],
    ['cut tabata', ['no-such-block']],
    ['cut rest', ['several-blocks']],
    ['block C 45/15', ['block-without-numbers']],
    ['block C 10:30', ['block-without-numbers']],
    ['block A 8:00', ['block-without-numbers']],
    ['reps C 60', ['interval-too-short']],
    ['reps C', ['edit-incomplete']],
    ['drop A and', ['edit-incomplete']],
    ['drop A, Z', ['no-such-letter']],
    ['between letters E 30', ['block-without-numbers']],
    ['work C 90', ['interval-too-short']],
    ['rest C 15', ['not-here']],
    ['sides E each side\nrounds A x60', ['out-of-range']],
    ['sides B left', ['sides-not-possible']],
    ['slot 500', ['out-of-range']],
    ['level 5', ['out-of-range']],
    ['kit unicorn', ['unknown-kit']],
    ['hello there', ['unknown-edit']],
    ['swpa A plank', ['unknown-edit']],
    ['', ['unknown-edit']],
  ])('%s', (edit, codes) => {
    expect(problemsIn(edit)).toEqual(codes);
  });

  test('one line that cannot be made leaves the plan as it is, and all of them are told', () => {
    const { plan, changes, problems } = editPlan(
      base(),
      'swap B front squat\ndrop Z\nrounds A lots',
      context,
    );
    expect([plan, changes]).toEqual([undefined, []]);
    expect(problems.map(({ line, code }) => [line, code])).toEqual([
      [2, 'no-such-letter'],
      [3, 'edit-incomplete'],
    ]);
  });

  test('lines keep their ids, new ones are new', () => {
    const before = base();
    const { plan } = editPlan(before, 'swap B front squat\nadd plank after A\nmove E before A', context);
    const idOf = (each: Plan | undefined, name: string) =>
      (each === undefined ? [] : labelledLetters(each)).find(({ letter }) => {
        const choice = letter.moves[0]?.choice;
        return choice?.kind === 'move' && choice.moveId === name;
      })?.letter.id;
    expect(idOf(plan, 'front-squat')).toBe(idOf(before, 'goblet-squat'));
    expect(idOf(plan, 'reverse-lunge')).toBe(idOf(before, 'reverse-lunge'));
    const old = new Set(labelledLetters(before).map(({ letter }) => letter.id));
    expect(idOf(plan, 'plank')).toBeDefined();
    expect(old.has(idOf(plan, 'plank') ?? '')).toBe(false);
  });
});

describe('what changed, as data', () => {
  function changesOf(edit: string): readonly Omit<Change, 'line'>[] {
    return editPlan(base(), edit, context).changes.map((change) => {
      const { line: _, ...facts } = { line: '', ...change };
      return facts;
    });
  }

  test.each<readonly [string, readonly unknown[]]>([
    ['18 now', [{ kind: 'fact', fact: 'people', before: '12', after: '18' }]],
    ['focus legs', [{ kind: 'fact', fact: 'focus', after: 'legs' }]],
    ['rounds A x4', [{ kind: 'block', before: 'straight x3, 40/20', after: 'straight x4, 40/20' }]],
    [
      'easier C',
      [{ kind: 'letter', label: 'C', before: '8 push-up easier knee push-up', after: '8 knee push-up' }],
    ],
    [
      'drop D',
      [
        { kind: 'letter-dropped', label: 'D', text: '10 dead bug' },
        {
          kind: 'letters-moved',
          letters: [
            { from: 'E', to: 'D' },
            { from: 'F', to: 'E' },
            { from: 'G', to: 'F' },
          ],
        },
      ],
    ],
    [
      'cut finisher',
      [{ kind: 'block-dropped', text: 'finisher, 60/0', letters: [{ label: 'G', text: 'burpee' }] }],
    ],
    ['rest after E 45', [{ kind: 'block-added', text: 'rest 45', letters: [] }]],
    [
      'add plank after F',
      [
        { kind: 'letter-added', label: 'G', text: 'plank' },
        { kind: 'letters-moved', letters: [{ from: 'G', to: 'H' }] },
      ],
    ],
    [
      'swap E goblet squat',
      [
        { kind: 'letter', label: 'E', before: 'reverse lunge alternating', after: 'goblet squat' },
        { kind: 'side-dropped', label: 'E', sides: 'alternating' },
      ],
    ],
    [
      'swap F2 reverse lunge',
      [
        {
          kind: 'letter',
          label: 'F',
          before: 'dumbbell floor press + glute bridge',
          after: 'dumbbell floor press + reverse lunge split sides',
        },
        { kind: 'side-assumed', label: 'F2', sides: 'split sides' },
      ],
    ],
  ])('%s', (edit, changes) => {
    expect(changesOf(edit)).toEqual(changes);
  });
});
