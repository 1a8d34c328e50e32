import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  escapeEntities,
  type MrkdwnToken,
  printDate,
  printPlain,
  readEntities,
  readMrkdwn,
} from '../../../../bot/local/page/read-mrkdwn.ts';

const text = (value: string): MrkdwnToken => ({ kind: 'text', text: value });

// The forms are the platform's: https://docs.slack.dev/messaging/formatting-message-text
describe('message markup', () => {
  test.each<[string, readonly MrkdwnToken[]]>([
    ['plain', [text('plain')]],
    [
      '*bold* and _italic_',
      [{ kind: 'bold', tokens: [text('bold')] }, text(' and '), { kind: 'italic', tokens: [text('italic')] }],
    ],
    ['~gone~', [{ kind: 'strike', tokens: [text('gone')] }]],
    [
      '*a _b_ c*',
      [{ kind: 'bold', tokens: [text('a '), { kind: 'italic', tokens: [text('b')] }, text(' c')] }],
    ],
    ['`*not bold*`', [{ kind: 'code', text: '*not bold*' }]],
    ['```a\n b &lt; c```', [{ kind: 'pre', text: 'a\n b < c' }]],
    ['one\ntwo', [text('one'), { kind: 'break' }, text('two')]],
    ['&amp; &lt;b&gt;', [text('& <b>')]],
    ['&amp;lt;', [text('&lt;')]],
    [
      '<https://a.example/x?a=1&amp;b=2|the page>',
      [{ kind: 'link', url: 'https://a.example/x?a=1&b=2', label: 'the page' }],
    ],
    ['<https://a.example>', [{ kind: 'link', url: 'https://a.example', label: 'https://a.example' }]],
    ['<@U0MIRA>', [{ kind: 'person', id: 'U0MIRA' }]],
    ['<@U0MIRA|mira>', [{ kind: 'person', id: 'U0MIRA', label: 'mira' }]],
    ['<#C0TEAM|>', [{ kind: 'channel', id: 'C0TEAM' }]],
    ['<!here>', [{ kind: 'everyone', word: 'here' }]],
    [
      '<!date^1791964800^{date_short_pretty} {time}|Wed 08:00>',
      [{ kind: 'date', seconds: 1791964800, format: '{date_short_pretty} {time}', fallback: 'Wed 08:00' }],
    ],
    [
      '&gt; quoted\n&gt; twice\nafter',
      [{ kind: 'quote', tokens: [text('quoted'), { kind: 'break' }, text('twice')] }, text('after')],
    ],
    ['2*3*4', [text('2*3*4')]],
    ['snake_case_name', [text('snake_case_name')]],
    ['* not bold *', [text('* not bold *')]],
    ['**', [text('**')]],
    ['<javascript:alert(1)|click>', [text('<javascript:alert(1)|click>')]],
    ['<img src=x onerror=alert(1)>', [text('<img src=x onerror=alert(1)>')]],
    ['&lt;@U0MIRA&gt;', [text('<@U0MIRA>')]],
  ])('%s', (source, tokens) => {
    expect(readMrkdwn(source)).toEqual(tokens);
  });

  test('what was escaped comes out as it was typed, with no meaning left', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'ab<>&|@#!:/.') }), (typed) => {
        expect(readEntities(escapeEntities(typed))).toBe(typed);
        const tokens = readMrkdwn(escapeEntities(typed)).flatMap((token) =>
          token.kind === 'quote' ? token.tokens : [token],
        );
        expect(tokens.every(({ kind }) => kind === 'text')).toBe(true);
      }),
    );
  });

  test('any text is read, and none of its letters are lost', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'ab *_~`\n') }), (source) => {
        const lettersOf = (tokens: readonly MrkdwnToken[]): string =>
          tokens
            .map((token) => {
              if ('tokens' in token) return lettersOf(token.tokens);
              return token.kind === 'text' || token.kind === 'code' || token.kind === 'pre' ? token.text : '';
            })
            .join('');
        const letters = (value: string) => value.replace(/[^ab]/g, '');
        expect(letters(lettersOf(readMrkdwn(source)))).toBe(letters(source));
      }),
    );
  });
});

describe('dates in the zone of the reader', () => {
  const noon = Date.UTC(2026, 9, 14, 12, 0) / 1000;
  const now = '2026-10-14T08:00:00.000Z';
  const print = (format: string, seconds = noon, timeZone = 'Europe/Lisbon') =>
    printDate({ seconds, format, fallback: 'fallback' }, timeZone, now);

  test.each([
    ['{time}', '13:00'],
    ['{date_short_pretty} {time}', 'today 13:00'],
    ['{date_long}', 'Wednesday 14 October 2026'],
    ['{date_num}', '14/10/2026'],
    ['{nonsense}', 'fallback'],
  ])('%s', (format, printed) => {
    expect(print(format)).toBe(printed);
  });

  test.each([
    [noon + 86_400, 'tomorrow'],
    [noon - 86_400, 'yesterday'],
    [noon + 2 * 86_400, 'Fri 16 Oct'],
  ])('near days have names: %s', (seconds, printed) => {
    expect(print('{date_short_pretty}', seconds)).toBe(printed);
  });

  test('another zone, another time', () => {
    expect(print('{time}', noon, 'Asia/Kolkata')).toBe('17:30');
  });
});

test.each([
  ['<@U0TOMAS> approved *v1* in <#C0REVIEW>', '@Tomas approved v1 in #class-review'],
  ['_a_ ~b~ `c*d` <https://a.example|the page>', 'a b c*d the page'],
  ['&gt; quoted\n<!here> now', 'quoted@here now'],
  ['<!date^1792389600^{time}|07:00> &amp; on', '07:00 & on'],
])('the words of %s alone', (markup, words) => {
  const names = {
    nameOf: (id: string) => ({ U0TOMAS: 'Tomas' })[id] ?? id,
    channelNameOf: (id: string) => ({ C0REVIEW: 'class-review' })[id] ?? id,
  };
  expect(printPlain(readMrkdwn(markup), names)).toBe(words);
});
