import { describe, expect, test } from 'vitest';
import type { PlanFacts } from '../../../domain/plan/plan.ts';
import { notesOf, problemsOf, read } from './reading.ts';

const below = '\nemom 10\n8 goblet squat';

function factsOf(line: string): PlanFacts | undefined {
  return read(line + below).plan?.facts;
}

const none = { slotSeconds: 2700, beginners: false, olderAdults: false, hotRoom: false };

describe('the first line', () => {
  test.each<readonly [string, Partial<PlanFacts>]>([
    [
      'Row & Squat, 40 min, level 2, 12 people',
      { title: 'Row & Squat', slotSeconds: 2400, level: 2, people: 12 },
    ],
    ['Row & Squat 40m L2 12ppl', { title: 'Row & Squat', slotSeconds: 2400, level: 2, people: 12 }],
    ['12 people, level 1, 50 min, Strong', { title: 'Strong', slotSeconds: 3000, level: 1, people: 12 }],
    ['Strong 25’', { title: 'Strong', slotSeconds: 1500 }],
    ['Take 2’s, 45 min', { title: 'Take 2’s' }],
    ['Strong 1h', { title: 'Strong', slotSeconds: 3600 }],
    ['Strong 1:15 h', { title: 'Strong', slotSeconds: 4500 }],
    ['Strong 1h15', { title: 'Strong', slotSeconds: 4500 }],
    ['Strong, 45 min, mixed', { title: 'Strong', level: 'mixed' }],
    ['Strong, focus lower body, 45 min', { title: 'Strong', focus: 'lower body' }],
    ['Strong, 45 min, aim steady pace, beginners', { title: 'Strong', aim: 'steady pace', beginners: true }],
    ['Strong, 45 min, older adults, hot room', { title: 'Strong', olderAdults: true, hotRoom: true }],
    ['Strong, 45 min, Thu 18:30', { title: 'Strong', startsAt: { date: '2026-03-05', time: '18:30' } }],
    ['Strong, 45 min, Wed 6.30pm', { title: 'Strong', startsAt: { date: '2026-03-04', time: '18:30' } }],
    ['Strong 45 min tomorrow 6pm', { title: 'Strong', startsAt: { date: '2026-03-03', time: '18:00' } }],
    ['Strong, 45 min, Mon 08:00', { title: 'Strong', startsAt: { date: '2026-03-09', time: '08:00' } }],
    ['Strong, 45 min, Mon 10:00', { title: 'Strong', startsAt: { date: '2026-03-02', time: '10:00' } }],
    [
      'Strong, 45 min, 2026-04-01 07:00',
      { title: 'Strong', startsAt: { date: '2026-04-01', time: '07:00' } },
    ],
    [
      'Strong, 45 min, Wed 4 Mar, 18:30',
      { title: 'Strong', startsAt: { date: '2026-03-04', time: '18:30' } },
    ],
    ['Strong, 45 min, Wed 4 Mar 18:30', { title: 'Strong', startsAt: { date: '2026-03-04', time: '18:30' } }],
    ['Strong, 4 March 6pm, 45 min', { title: 'Strong', startsAt: { date: '2026-03-04', time: '18:00' } }],
    ['Strong, Mar 4th, 18:30, 45 min', { title: 'Strong', startsAt: { date: '2026-03-04', time: '18:30' } }],
    ['Strong, 4.3. 18:30, 45 min', { title: 'Strong', startsAt: { date: '2026-03-04', time: '18:30' } }],
    ['Strong, 45 min, 1 Mar 10:00', { title: 'Strong', startsAt: { date: '2027-03-01', time: '10:00' } }],
    [
      'Strong, 45 min, 3 Jan 2027 10:00',
      { title: 'Strong', startsAt: { date: '2027-01-03', time: '10:00' } },
    ],
    ['Strong, 45 min, next Mon 18:30', { title: 'Strong', startsAt: { date: '2026-03-09', time: '18:30' } }],
    ['Strong, 45 min, next Wed 18:30', { title: 'Strong', startsAt: { date: '2026-03-11', time: '18:30' } }],
    ['Strong, 45 min, this Wed 18:30', { title: 'Strong', startsAt: { date: '2026-03-04', time: '18:30' } }],
    ['March 4 Strong, 45 min', { title: 'March 4 Strong' }],
    ['Strong, 45 min, Loft', { title: 'Strong', room: 'Loft' }],
    ['Strong 45 min long-room', { title: 'Strong', room: 'Long Room' }],
    ['Thursday Strength, 45 min', { title: 'Thursday Strength' }],
    ['*Legs – part 2* 45 min', { title: 'Legs, part 2' }],
    ['45 min, level 3', { level: 3 }],
    ['Strong / 40 min / level 2', { title: 'Strong', slotSeconds: 2400, level: 2 }],
    ['Push / Pull | 40 min', { title: 'Push / Pull', slotSeconds: 2400 }],
    ['Strong; 40 min; level 2', { title: 'Strong', slotSeconds: 2400, level: 2 }],
    ['Strong\n40 min, level 2\n12 people', { title: 'Strong', slotSeconds: 2400, level: 2, people: 12 }],
    ['Strong, 45 min, older adults, 45 min, older adults', { title: 'Strong', olderAdults: true }],
    ['30 min emom', { title: 'emom', slotSeconds: 1800 }],
  ])('%s', (line, facts) => {
    expect(factsOf(line)).toEqual({ ...none, ...facts });
    expect(problemsOf(line + below)).toEqual([]);
  });

  test.each<readonly [string, readonly unknown[]]>([
    ['Beginners Strength, 45 min', [{ code: 'fact-in-title', fact: 'beginners' }]],
    ['Mixed Strength, 45 min', [{ code: 'fact-in-title', fact: 'mixed level' }]],
    ['Loft Strength, 45 min', [{ code: 'fact-in-title', fact: 'Loft' }]],
    ['Strong, Loft, 45 min', []],
    ['Strong, 45 min, beginners', []],
    ['Strong, 45 min, 18:30', [{ code: 'next-such-time', startsAt: { date: '2026-03-02', time: '18:30' } }]],
    ['Strong, 45 min, 8am', [{ code: 'next-such-time', startsAt: { date: '2026-03-03', time: '08:00' } }]],
  ])('%s is said', (line, notes) => {
    expect(notesOf(line + below)).toEqual(notes);
  });

  test('what differs from what is said already is a problem, on the next line too', () => {
    expect(problemsOf(`Strong, 45 min, 40 min${below}`)).toEqual([['said-twice', '40 min']]);
    expect(problemsOf(`Strong, 12 people\n14 people${below}`)).toEqual([['said-twice', '14 people']]);
    expect(problemsOf(`Strong\n14 goblets${below}`)).toEqual([['line-before-block', '14 goblets']]);
  });

  test('a class without a length takes the studio default and says so', () => {
    expect(read(`Strong${below}`).notes).toEqual([{ code: 'slot-assumed', slotSeconds: 2700 }]);
  });

  test('a first line that reads whole as a block line is one, and the missing title is said', () => {
    const { plan, notes } = read('emom 10\n8 goblet squat');
    expect(plan?.facts.title).toBeUndefined();
    expect(plan?.blocks).toHaveLength(1);
    expect(notes.map(({ code }) => code)).toEqual(['title-missing', 'slot-assumed']);
  });

  test.each(['Circuit Thursday, 45 min', 'Tabata Time 45 min', 'Mobility, 45 min, level 1', 'Finisher'])(
    '%s is a title',
    (line) => {
      expect(read(line + below).plan?.blocks).toHaveLength(1);
      expect(read(line + below).plan?.facts.title).toBeDefined();
    },
  );

  test.each([
    ['Strong, 3 min', [['out-of-range', '3 min']]],
    ['Strong, 200 min', [['out-of-range', '200 min']]],
    ['Strong, 45 min, level 4', [['out-of-range', 'level 4']]],
    ['Strong, 45 min, 60 min', [['said-twice', '60 min']]],
    ['Strong, 45 min, today 6am', [['moment-past', 'today 6am']]],
    ['Strong, 45 min, Tue 4 Mar 18:30', [['other-weekday', 'Tue 4 Mar 18:30']]],
    ['Strong, 45 min, Tue 4 Mar 2026 18:30', [['other-weekday', 'Tue 4 Mar 2026 18:30']]],
    ['Strong, 45 min, Tue 2026-03-04 18:30', [['other-weekday', 'Tue 2026-03-04 18:30']]],
  ])('%s is a problem', (line, problems) => {
    expect(problemsOf(line + below)).toEqual(problems);
  });
});

describe('talk above the title line', () => {
  test.each([
    ['Try this one tomorrow?\nSand & Stone, 30 min, level 2', [1]],
    ['Hi!\nfor the early crew:\nSand & Stone, 30 min, level 2', [1, 2]],
    ['level 1 is fine\nSand & Stone, 30 min, level 2', [1]],
  ])('%s is left out, and that is said', (lines, leftOut) => {
    expect(factsOf(lines)).toEqual({ ...none, title: 'Sand & Stone', slotSeconds: 1800, level: 2 });
    expect(problemsOf(lines + below)).toEqual([]);
    const [first = ''] = lines.split('\n');
    expect(notesOf(lines + below)[0]).toEqual({ code: 'line-left-out', line: 1, text: first });
    expect(notesOf(lines + below)).toHaveLength(leftOut.length);
  });

  test.each([
    ['Sand & Stone\n30 min, level 2', 'Sand & Stone'],
    ['Sand & Stone, 30 min, level 2\nmarch 20 min', 'Sand & Stone'],
    ['Sand & Stone\ncircuit 20 min', 'Sand & Stone'],
  ])('%s has none: the first line is the title', (lines, title) => {
    expect(read(lines + below).plan?.facts.title).toBe(title);
  });

  test('a title line alone is known by its facts', () => {
    expect(read('Lift & Push, 45 min, level 1').facts).toEqual({ ...none, title: 'Lift & Push', level: 1 });
    expect(read(`Lift & Push, 45 min${below}`).facts).toBeUndefined();
  });
});

describe('kit', () => {
  test.each([
    ['kit: dumbbells, mats', ['dumbbell', 'mat']],
    ['kit: none', []],
    ['equipment: DBs and a bench'.replace(' a ', ' '), ['dumbbell', 'bench']],
    ['Kit: kettlebells + med balls', ['kettlebell', 'medicine ball']],
    ['kit: bands', ['long band', 'mini band']],
  ])('%s', (line, kit) => {
    expect(read(`Strong, 45 min\n${line}${below}`).plan?.facts.kit).toEqual(kit);
  });

  test('words that choose among the pieces are read past, and that is said', () => {
    const text = `Strong, 45 min\nkit: light dumbbells, a pair of kettlebells${below}`;
    expect(read(text).plan?.facts.kit).toEqual(['dumbbell', 'kettlebell']);
    expect(notesOf(text)).toEqual([
      { code: 'read-as', read: 'light dumbbells', as: 'dumbbells' },
      { code: 'read-as', read: 'a pair of kettlebells', as: 'kettlebells' },
    ]);
  });

  test('without a kit line nothing is said about kit', () => {
    expect(read(`Strong, 45 min${below}`).plan?.facts).not.toHaveProperty('kit');
  });

  test('an unknown kit word is a problem that loses nothing else', () => {
    const text = `Strong, 45 min\nkit: unicorn, mats${below}`;
    expect(problemsOf(text)).toEqual([['unknown-kit', 'unicorn']]);
    expect(read(text).plan?.blocks).toHaveLength(1);
  });
});
