import { bench, describe } from 'vitest';
import { catalogue } from '../../domain/catalogue/catalogue.ts';
import { reportOnClass } from '../../domain/class-report.ts';
import { defaultSettings } from '../../domain/settings.ts';
import { longClass } from '../classes/long-class.ts';

const context = { catalogue, settings: defaultSettings, now: '2026-03-02T09:00:00Z' };
const first = reportOnClass(longClass, context);
if (first.kind === 'problems') throw new Error(JSON.stringify(first.problems));
const asJson = JSON.stringify(first.plan);

describe('a class of 30 lines', () => {
  bench('read and full report', () => {
    reportOnClass(longClass, context);
  });

  bench('JSON.parse of its plan', () => {
    JSON.parse(asJson);
  });
});
