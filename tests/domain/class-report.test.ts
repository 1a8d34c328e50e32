import { expect, test } from 'vitest';
import { catalogue } from '../../domain/catalogue/catalogue.ts';
import { reportOnClass, reportOnPlan } from '../../domain/class-report.ts';
import { defaultSettings } from '../../domain/settings.ts';
import { longClass } from '../classes/long-class.ts';
import { rowAndSquat } from '../classes/row-and-squat.ts';

const context = { catalogue, settings: defaultSettings, now: '2026-03-02T09:00:00Z' };

test('a class that reads has a report, with the notes of the reader', () => {
  const report = reportOnClass(rowAndSquat.text, context);
  expect(report).toMatchObject({
    kind: 'report',
    timeline: { totalSeconds: 2400 },
    fit: { spareSeconds: 0 },
  });
  expect(report.notes.map(({ code }) => code)).toEqual(['rest-once', 'rest-once']);
});

test('a line that can’t be read gives all problems, and the plan of the other lines', () => {
  const report = reportOnClass(rowAndSquat.text.replace('goblet squat', 'goblin squash'), context);
  expect(report).toMatchObject({
    kind: 'problems',
    problems: [{ code: 'unknown-move', line: 6, read: 'goblin squash' }],
    plan: { facts: { title: 'Row & Squat' } },
  });
});

test('the report of a plan is that of its text, without notes', () => {
  const report = reportOnClass(longClass, context);
  if (report.kind === 'problems') throw new Error(JSON.stringify(report.problems));
  expect(reportOnPlan(report.plan, context)).toEqual({ ...report, notes: [] });
});

test('the same text gives the same report', () => {
  expect(reportOnClass(longClass, context)).toEqual(reportOnClass(longClass, context));
});
