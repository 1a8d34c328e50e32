import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readClassRequest } from '../../../domain/calendar/read-class-request.ts';

const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');
const section = readme.slice(
  readme.indexOf('## The timetable, by word'),
  readme.indexOf('## Running it for real'),
);
const words = [...section.matchAll(/^\| `([^`]+)` \|/gm)].flatMap(([, each]) =>
  each === undefined ? [] : [each],
);

test('the words of the README are those that are read', () => {
  expect(words.map((each) => readClassRequest(each.replace('@name', '<@U1>'))?.kind)).toEqual([
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
