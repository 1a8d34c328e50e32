import { expect, test } from 'vitest';
import { energyRows } from '../../../domain/catalogue/energy-rows.ts';
import { kilocalories } from '../../../domain/load/energy.ts';

test.each([
  { what: '10 MET, 68 kg, 30 min (ACE)', met: 10, kg: 68, minutes: 30, kcal: 357, digits: 0 },
  { what: '10 MET, 68 kg, 1 min (ACE)', met: 10, kg: 68, minutes: 1, kcal: 11.9, digits: 1 },
  {
    what: '12.5 MET, 75 kg, 30 min (published 492)',
    met: 12.5,
    kg: 75,
    minutes: 30,
    kcal: 492.19,
    digits: 2,
  },
  { what: '7.5 MET, 70 kg, 45 min (arithmetic)', met: 7.5, kg: 70, minutes: 45, kcal: 413.44, digits: 2 },
])('$what is $kcal kcal', ({ met, kg, minutes, kcal, digits }) => {
  expect(kilocalories(met, kg, 60 * minutes)).toBeCloseTo(kcal, digits);
});

test('the other convention, MET × kg × h, gives 4.8 % less and is not used', () => {
  const ours = kilocalories(10, 68, 1800);
  const other = 10 * 68 * 0.5;
  expect(((ours - other) / ours) * 100).toBeCloseTo(4.8, 1);
});

test.each([
  { row: 'circuit, moderate', in2011: 4.3, in2024: 5.0 },
  { row: 'circuit, kettlebells, vigorous', in2011: 8.0, in2024: 7.5 },
  { row: 'calisthenics, vigorous', in2011: 8.0, in2024: 7.5 },
] as const)(
  '$row: the edition of 2024 (Herrmann SD et al.) stands, not that of 2011 (Ainsworth BE et al.)',
  ({ row, in2011, in2024 }) => {
    const { met, edition } = energyRows[row];
    expect({ met, edition }).toEqual({ met: in2024, edition: 2024 });
    // 30 min at 68 kg in either edition: MET × 3.5 × 68 ÷ 200 × 30 = MET × 35.7.
    expect(kilocalories(met, 68, 1800)).toBeCloseTo(in2024 * 35.7, 6);
    expect(kilocalories(in2011, 68, 1800)).toBeCloseTo(in2011 * 35.7, 6);
  },
);
