import { expect, test } from 'vitest';
import { refusalText } from '../../../../bot/words/en/refusal-words.ts';
import type { Refusal } from '../../../../domain/plan/decide-step.ts';

test.each<[Refusal, string]>([
  [
    { code: 'setting-missing', facts: { setting: 'headCoaches' } },
    'Nobody can approve yet: no head coach is named. Name one in Settings, on Evenset’s home.',
  ],
  [
    { code: 'setting-missing', facts: { setting: 'reviewChannel' } },
    'Not sent: no review channel is set. Your draft is kept; choose the channel in Settings, on Evenset’s home.',
  ],
  [
    { code: 'not-a-head-coach', facts: {} },
    'Only a head coach approves a plan or asks for changes. You can still write in the thread.',
  ],
  [
    { code: 'own-plan', facts: { soleCoach: false } },
    'This is your own plan: another head coach approves it.',
  ],
  [
    { code: 'own-plan', facts: { soleCoach: true } },
    'This is your own plan. As the only coach you may approve it once Settings say so, under Roles.',
  ],
  [
    { code: 'not-your-plan', facts: { authorId: 'U1' } },
    "This plan is <@U1>'s. Only they or a head coach can change it.",
  ],
  [
    { code: 'stale-version', facts: { named: 3, current: 4 } },
    'That was v3. The plan is at v4 now: look at it, then decide.',
  ],
  [
    {
      code: 'already-decided',
      facts: { step: 'approved', by: 'U2', at: '2026-11-23T09:00:00Z', version: 3 },
    },
    '<@U2> came first: approved v3. Nothing was changed.',
  ],
  [
    {
      code: 'already-decided',
      facts: { step: 'changes asked', by: 'U2', at: '2026-11-23T09:00:00Z', version: 3 },
    },
    '<@U2> came first: asked for changes to v3. Nothing was changed.',
  ],
  [{ code: 'already-in-review', facts: { version: 3 } }, 'v3 is in review already.'],
  [
    { code: 'not-in-review', facts: { state: 'draft' } },
    'The plan is a draft, so there is no review to decide. Its author can send it.',
  ],
  [
    { code: 'already-approved', facts: { version: 3 } },
    'v3 is approved already. An edit takes it back to review.',
  ],
  [
    { code: 'lines-unread', facts: { count: 1 } },
    'Not sent: one line could not be read. Put it right, then send.',
  ],
  [
    { code: 'lines-unread', facts: { count: 2 } },
    'Not sent: 2 lines could not be read. Put them right, then send.',
  ],
  [{ code: 'reason-needed', facts: {} }, 'Say in a few words what to change, so that it can be done.'],
])('%j', (refusal, text) => {
  expect(refusalText(refusal)).toBe(text);
});
