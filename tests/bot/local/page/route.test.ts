import { describe, expect, test } from 'vitest';
import { printRoute, readPermalink, readRoute } from '../../../../bot/local/page/route.ts';

describe('the address of what is shown', () => {
  test.each([
    { as: 'U0MIRA', place: 'C0TEAM' },
    { as: '', place: 'home' },
    { as: 'U0MIRA', place: 'D0MIRA', thread: '1791964800.000100' },
  ])('comes back as it was written: %o', (route) => {
    expect(readRoute(printRoute(route))).toEqual(route);
  });

  test.each([
    ['/archives/C0TEAM/p1791964800000200', { place: 'C0TEAM', thread: '1791964800.000200' }],
    [
      '/archives/C0TEAM/p1791964800000200?thread_ts=1791964800.000100&cid=C0TEAM',
      { place: 'C0TEAM', thread: '1791964800.000100' },
    ],
    ['/elsewhere', undefined],
  ])('a message has an address of its own: %s', (path, expected) => {
    expect(readPermalink(new URL(path, 'http://127.0.0.1:4600'))).toEqual(expected);
  });
});
