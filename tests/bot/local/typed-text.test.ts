import { describe, expect, test } from 'vitest';
import { decodeTyped, encodeTyped } from '../../../bot/local/typed-text.ts';
import { createTestWorkspace } from './start-test-workspace.ts';

const { workspace } = createTestWorkspace();

describe('what a person typed', () => {
  test.each([
    ['Row & Squat', 'Row &amp; Squat'],
    ['a < b > c', 'a &lt; b &gt; c'],
    ['@Evenset week', '<@U0BOT> week'],
    ['@tomas look at #review', '<@U0TOMAS> look at <#C0REVIEW|review>'],
    ['@nobody', '@nobody'],
    ['see https://a.example/x', 'see <https://a.example/x>'],
    ['<!everyone>', '&lt;!everyone&gt;'],
  ])('%s', (typed, sent) => {
    expect(encodeTyped(typed, workspace)).toBe(sent);
    expect(decodeTyped(sent, workspace).toLowerCase()).toBe(typed.toLowerCase());
  });
});
