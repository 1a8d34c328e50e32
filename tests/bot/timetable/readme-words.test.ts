import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readClassRequest } from '../../../domain/calendar/read-class-request.ts';

const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');
const section = readme.slice(
  readme.indexOf('### Anywhere else'),
  readme.indexOf('### What it posts by itself'),
);
const words = [...section.matchAll(/^\| `([^`]+)` \|/gm)].flatMap(([, each]) =>
  each === undefined ? [] : [each],
);

test('the words of the README for the timetable are those that are read', () => {
  const kinds = words.flatMap((each) => readClassRequest(each.replace('@name', '<@U1>'))?.kind ?? []);
  expect(kinds).toEqual([
    'cannot teach',
    'cancel',
    'on again',
    'move',
    'give',
    'holiday',
    'people now',
    'calendar',
  ]);
});
