import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { defaultSources } from '../domain/default-sources.ts';
import { defaultSettings } from '../domain/settings.ts';
import { defaultsTable, withDefaultsTable } from './helpers/defaults-table.ts';

const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');

describe('the table of defaults', () => {
  test('stands in README.md as the code says; npm run defaults renews it', () => {
    expect(readme).toBe(withDefaultsTable(readme));
  });

  test('has a row for every default and every limit', () => {
    const paths = Object.entries(defaultSettings).flatMap(([name, value]: [string, unknown]) =>
      ['transitions', 'floors', 'checks', 'dose', 'retention'].includes(name) && typeof value === 'object'
        ? Object.keys(value ?? {}).map((key) => `${name}.${key}`)
        : [name],
    );
    const table = defaultsTable();
    expect(paths.filter((path) => !table.includes(`| \`${path}\` |`))).toEqual([]);
  });

  test('shows a changed value and a missing mark', () => {
    expect(readme).toContain(`| \`dose.low\` | ${defaultSettings.dose.low} |`);
    expect(() => withDefaultsTable('no marks')).toThrow('marks');
  });

  /** Values as published in the sources that stand beside them. */
  test.each([
    [defaultSettings.floors.leastWarmUpSeconds, 5 * 60],
    [defaultSettings.checks.longCoolDownSeconds, 10 * 60],
    [defaultSettings.checks.heavyCompoundRestSeconds, 2 * 60],
    [Math.round(defaultSettings.checks.squareMetresAPerson * 10.764), 45],
    [defaultSettings.dose.low, 4],
    [defaultSettings.dose.high, 10],
    [defaultSettings.dose.veryHigh, 20],
  ])('a default of %d is the published %d', (value, printed) => {
    expect(value).toBe(printed);
  });

  test('a published source names who, and where or when', () => {
    const published = Object.values(defaultSources)
      .flatMap((each) => ('kind' in each ? [each] : Object.values(each)))
      .flatMap((each) => (each.kind === 'published' ? [each.source] : []));
    expect(published.length).toBeGreaterThan(5);
    expect(published.filter((source) => !/ACSM|\b(?:19|20)\d\d\b/.test(source))).toEqual([]);
  });
});
