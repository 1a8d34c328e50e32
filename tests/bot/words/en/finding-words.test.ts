import { describe, expect, test } from 'vitest';
import { findingText, severityText, standingLine } from '../../../../bot/words/en/finding-words.ts';
import { catalogue } from '../../../../domain/catalogue/catalogue.ts';
import { labelsByLine } from '../../../../domain/plan/labels.ts';
import { goodToKnowCases } from '../../../domain/checks/good-to-know-cases.ts';
import { lookAtCases } from '../../../domain/checks/look-at-cases.ts';
import { mustFixCases } from '../../../domain/checks/must-fix-cases.ts';
import { contextWith, planOf, subjectOf } from '../../../domain/checks/subject-of.ts';

const cases = [...mustFixCases, ...lookAtCases, ...goodToKnowCases];

const spoken = cases.flatMap(({ check, bad, facts }) => {
  const context = contextWith(facts);
  const plan = planOf(bad, context);
  return check(subjectOf(plan, context), context).map((finding) => {
    const { sentence, why } = findingText(
      finding,
      labelsByLine(plan),
      (id) => catalogue.byId.get(id)?.name ?? id,
    );
    return { code: finding.code, sentence, why };
  });
});

describe('the words of findings', () => {
  test('each finding is one short sentence, and why is one with its source', () => {
    expect(spoken.map(({ sentence }) => sentence)).toEqual([
      '2:00 over the 20:00 there are.',
      'reverse lunge: right 2:00, left 0:00.',
      'reverse lunge: right 10 reps, left 8 reps.',
      'C: 1 step needed, not on the kit line.',
      'A and B: 16 long bands needed, the room has 12: swap a move, or go in pairs.',
      'A: 32 dumbbells needed, the room has 30.',
      'A: 24 dumbbells needed, 8 of 30 still out.',
      '17 people, the room is posted for 16: take 16 (16 now), or a larger room.',
      'B and C are still open: write swap B and a move.',
      'B lies down next to the swing or throw of A.',
      'A2 lies down next to the swing or throw of A1.',
      'B: fast or technical work with no rest before or after.',
      'A, B and C: the lower back three times in a row.',
      'A and B: someone may lie next to a swing or throw.',
      'The work starts without a warm-up.',
      'Warm-up 3:00, the least here is 5:00.',
      'The class ends without a cool-down.',
      'Cool-down 2:30, the least here is 5:00.',
      'A: jumps in the first 4:00 of work.',
      'The warm-up has none of the first block in it: add one of its moves in your message.',
      '18:00 of 40:00 has no use: spare, or more cool-down than needed.',
      '6:00 of 30:00 has no use: spare, or more cool-down than needed.',
      'Nothing between B and the next block.',
      'B: the change takes 8 s of each 20 s.',
      'A: the change takes 6 s of each 18 s.',
      'C: the change takes 9 s of each 20 s.',
      'A1 and A2: quadriceps twice in a row.',
      'A, B and C: the wrists three times in a row.',
      'A, B and C: the grip three times in a row.',
      'A, B, C and D: 1.4 ups and downs a minute.',
      'A, B, C and D: 11 turns between front and back.',
      '15 people on 80 m², this work needs 6 m² each: room for 13.',
      'A1 and A2: two weights, no time to change.',
      'A1 and A2: two weights, no time to change.',
      'A: above level 1, no easier option named (knee push-up).',
      'A, B and C: 14:00 all out, 12:00 is the most at this level.',
      'A and B: 16:00 all out, 12:00 is the most at this level.',
      'A, B and C: 8:00 with weights and no rest.',
      'A: heavy, back after 60 s.',
      'A: heavy, back after 60 s.',
      'A: head down, then straight up.',
      'A and B: 5:40 on the back.',
      'A: new here, with no explaining before its block: explain 10.',
      'B: new here, with no explaining before its block: explain 10.',
      'A2: new here, and starts while people lie down: explain it before its block.',
      'B2: new here, and starts while people lie down: explain it before its block.',
      '4 moves are new here: keep 3, swap the others for known ones.',
      'B: stations of 40 s and 80 s.',
      'A and C: technical moves at the same time.',
      'Push 6 sets, pull 0.',
      'quadriceps: hard in Legs too, within 48 hours.',
      "Last time's main lifts are gone: Romanian deadlift and bent-over row.",
      'Main lifts as last time: goblet squat and dumbbell squat.',
      'A: 10 s to wipe shared kit.',
      'A and B: say where to park the weights.',
      'A: check bands and straps, and their anchors.',
      'A: check bands and straps, and their anchors.',
      'A and B: say where to park the weights.',
    ]);
  });

  test.each(spoken)('$code fits a phone and names its source', ({ sentence, why }) => {
    expect(sentence.length).toBeLessThanOrEqual(90);
    expect(why).toMatch(/^[^.]+ \((common practice|ACSM|[A-Za-z ,]+ \d{4})\)\.$/);
    expect(`${sentence} ${why}`).not.toMatch(/\b(you|should have|wrong|bad|forgot|undefined|NaN)\b/i);
  });

  test('severities', () => {
    expect([severityText('must fix'), severityText('look at'), severityText('good to know')]).toEqual([
      'Must fix',
      'Look at',
      'Good to know',
    ]);
  });

  test('the standing line names the stop signs and defers to local rules', () => {
    expect(standingLine).toBe(
      'Planning help only, not medical advice. Screening, clearance, group size, first aid and the emergency plan follow your local rules and qualified staff. Chest pain or pressure, faintness, confusion, irregular heartbeat, unusual breathlessness or sudden sharp pain: stop that person and start your emergency plan.',
    );
  });
});
