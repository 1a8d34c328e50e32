import { describe, expect, test } from 'vitest';
import { printWeekCsv } from '../../../bot/blocks/week-csv.ts';
import { english } from '../../../bot/words/en.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { balanceOfWeek } from '../../../domain/week/balance-of-week.ts';
import { reportTime, slot, studio, taught, week } from '../../domain/week/week-builder.ts';

const printed = (name: string) => {
  const monday = { ...slot('Mon'), name };
  const settings = studio([monday]);
  const classes = [taught(monday, { chest: 2.5 })];
  const report = balanceOfWeek(classes, { week, now: reportTime, settings, catalogue });
  return printWeekCsv(report, classes, settings, english);
};

describe('the week as CSV', () => {
  test('has a row for each of the 18 muscles, each as long as the head, lines ended as RFC 4180 says', () => {
    const lines = printed('Strong').split('\r\n');
    expect(lines).toHaveLength(1 + 18 + 1);
    expect(lines[0]).toBe(
      'muscle,priority,sets,days,seconds under tension,Mon,Tue,Wed,Thu,Fri,Sat,Sun,Strong 2026-11-16',
    );
    expect(lines).toContain('chest,first,2.5,1,100,2.5,0,0,0,0,0,0,2.5');
    expect(new Set(lines.slice(0, -1).map((line) => line.split(',').length))).toEqual(new Set([13]));
  });

  test.each([
    ['=HYPERLINK(1)', "'=HYPERLINK(1)"],
    ['+1', "'+1"],
    ['-1', "'-1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    [' =1', "' =1"],
    ['\t=1', "'\t=1"],
  ])('a slot named %j runs no formula', (name, cell) => {
    expect(printed(name).split('\r\n')[0]?.endsWith(`,${cell} 2026-11-16`)).toBe(true);
  });

  test('commas, quotes and line breaks stay in their cell', () => {
    expect(printed('A "B", C\nD')).toContain(',"A ""B"", C\nD 2026-11-16"\r\n');
    expect(printed('=A,B')).toContain(`,"'=A,B 2026-11-16"\r\n`);
  });
});
