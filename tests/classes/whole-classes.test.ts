import { describe, expect, test } from 'vitest';
import { catalogue } from '../../domain/catalogue/catalogue.ts';
import { reportOnClass } from '../../domain/class-report.ts';
import { defaultSettings } from '../../domain/settings.ts';
import { wholeClasses } from './whole-classes.ts';

const context = { catalogue, settings: defaultSettings, now: '2026-03-02T09:00:00Z' };
const named = wholeClasses.map((whole) => ({ name: whole.text.split(',')[0], ...whole }));

/** The report of a class that must read without a problem. */
const reportOf = (text: string) => {
  const report = reportOnClass(text, context);
  if (report.kind === 'problems') throw new Error(JSON.stringify(report.problems));
  return report;
};

describe.each(named)('$name', (whole) => {
  const { timeline, load, fit, findings } = reportOf(whole.text);

  test('its times', () => {
    expect({
      blockSeconds: timeline.blocks.map(({ startSeconds, endSeconds }) => endSeconds - startSeconds),
      totalSeconds: timeline.totalSeconds,
      workSeconds: timeline.workSeconds,
      restSeconds: timeline.restSeconds,
      spareSeconds: fit.spareSeconds,
    }).toEqual({
      blockSeconds: whole.blockSeconds,
      totalSeconds: whole.totalSeconds,
      workSeconds: whole.workSeconds,
      restSeconds: whole.restSeconds,
      spareSeconds: whole.spareSeconds,
    });
  });

  test('its load', () => {
    expect(load.setsByPattern).toEqual(whole.setsByPattern);
    expect(load.conditioningSeconds).toBe(whole.conditioningSeconds);
    if (whole.setsByMuscle !== undefined) expect(load.setsByMuscle).toEqual(whole.setsByMuscle);
  });

  test('nothing in it must be fixed', () => {
    expect(findings.filter(({ severity }) => severity === 'must fix')).toEqual([]);
  });

  test('sent for review, an open line must be filled, and nothing else', () => {
    const report = reportOnClass(whole.text, { ...context, sendingForReview: true });
    const mustFix = report.kind === 'report' ? report.findings : [];
    expect(mustFix.filter(({ severity }) => severity === 'must fix')).toHaveLength(whole.openLines ?? 0);
  });
});
