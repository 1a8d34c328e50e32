import { expect, test } from 'vitest';
import { defaultSettings } from '../../../domain/settings.ts';
import { buildTimeline } from '../../../domain/timing/build-timeline.ts';
import { cuePoints } from '../../../domain/timing/cue-points.ts';
import { letter, letters, move, on, open, plan, rounds, testContext } from '../../helpers/plan-builder.ts';

const cuesOf = (...blocks: Parameters<typeof plan>[0]) =>
  cuePoints(buildTimeline(plan(blocks), testContext()), defaultSettings).map(
    ({ kind, atSeconds, move: line }) => [atSeconds, kind, line?.replace('line ', '')],
  );

test('next 10 s before a bout, half-way, ten seconds before its end', () => {
  expect(cuesOf(open('warm-up', 300), rounds('circuit', 1, on(40, 20), letters('squat', 'row')))).toEqual([
    [290, 'next', 'squat'],
    [320, 'half-way', 'squat'],
    [330, 'ten-seconds', 'squat'],
    [350, 'next', 'row'],
    [380, 'half-way', 'row'],
    [390, 'ten-seconds', 'row'],
  ]);
});

test('the first bout of a class is announced at its start', () => {
  expect(cuesOf(rounds('circuit', 1, on(20, 0), letters('squat')))).toEqual([
    [0, 'next', 'squat'],
    [10, 'ten-seconds', 'squat'],
  ]);
});

test('in a split the change is called, in place of half-way', () => {
  expect(
    cuesOf(rounds('circuit', 1, on(45, 0), [letter([move('lunge', { sides: 'split sides' })])])),
  ).toEqual([
    [0, 'next', 'lunge'],
    [22, 'change', 'lunge'],
    [35, 'ten-seconds', 'lunge'],
  ]);
});

test('the next move is called as early as the studio wants, never before the bout before it starts', () => {
  const blocks = [open('warm-up', 300), rounds('circuit', 1, on(20, 5), letters('squat', 'row'))];
  const cues = cuePoints(buildTimeline(plan(blocks), testContext()), { nextCueSeconds: 30 });
  expect(cues.filter(({ kind }) => kind === 'next').map(({ atSeconds }) => atSeconds)).toEqual([270, 300]);
});
