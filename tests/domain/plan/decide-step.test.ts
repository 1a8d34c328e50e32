import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decideStep, type PlanStep } from '../../../domain/plan/decide-step.ts';
import type { LifeStep, PlanRecord } from '../../../domain/plan/plan-life.ts';
import { defaultSettings, type Settings } from '../../../domain/settings.ts';

const at = '2026-11-23T09:00:00.000Z';
const settings: Settings = { ...defaultSettings, headCoaches: ['mara', 'jonas'], reviewChannel: 'reviews' };
const draft: PlanRecord = {
  id: 'plan',
  authorId: 'ines',
  state: 'draft',
  currentVersion: 2,
  createdAt: '2026-11-22T09:00:00.000Z',
};
const inReview: PlanRecord = { ...draft, state: 'in review' };
const approved: PlanRecord = { ...draft, state: 'approved', approvedVersion: 2 };
const approve = (by: string, version = 2): PlanStep => ({ kind: 'approve', by, at, version });

describe('a new version', () => {
  test('of a draft stays a draft and tells nobody', () => {
    expect(decideStep(draft, { kind: 'change', by: 'ines', at }, settings)).toEqual({
      kind: 'done',
      record: { ...draft, currentVersion: 3 },
      tells: [],
    });
  });

  test('in review stays there, with the difference for the coaches', () => {
    expect(decideStep(inReview, { kind: 'change', by: 'ines', at }, settings)).toEqual({
      kind: 'done',
      record: { ...inReview, currentVersion: 3 },
      tells: [{ to: 'coaches', what: 'changed in review', version: 3, since: 2 }],
    });
  });

  test('after approval goes back to review, and the approved version stays known', () => {
    expect(decideStep(approved, { kind: 'change', by: 'ines', at }, settings)).toEqual({
      kind: 'done',
      record: { ...approved, state: 'in review', currentVersion: 3 },
      lifeStep: { kind: 'changed after approval', version: 3, by: 'ines', at },
      tells: [{ to: 'coaches', what: 'asks for review', version: 3, since: 2 }],
    });
  });

  test.each([
    [inReview, 'withdrawn'],
    [approved, 'changed after approval'],
  ] as const)('with lines nobody can read goes back to a draft', (record, kind) => {
    expect(decideStep(record, { kind: 'change', by: 'ines', at, problemCount: 1 }, settings)).toMatchObject({
      record: { state: 'draft', currentVersion: 3 },
      lifeStep: { kind, version: 3 },
    });
  });

  test.each([draft, inReview, approved])('never comes out approved, whoever makes it', (record) => {
    for (const by of ['ines', 'mara']) {
      const decision = decideStep(record, { kind: 'change', by, at }, settings);
      expect(decision).toMatchObject({ kind: 'done', record: { currentVersion: 3 } });
      expect(decision).not.toMatchObject({ record: { state: 'approved' } });
    }
  });

  test('is for the author and head coaches', () => {
    expect(decideStep(draft, { kind: 'change', by: 'timo', at }, settings)).toEqual({
      kind: 'refused',
      code: 'not-your-plan',
      facts: { authorId: 'ines' },
    });
  });
});

describe('sending', () => {
  test('asks the coaches for a review', () => {
    expect(decideStep(draft, { kind: 'send', by: 'ines', at, version: 2 }, settings)).toEqual({
      kind: 'done',
      record: inReview,
      lifeStep: { kind: 'sent', version: 2, by: 'ines', at },
      tells: [{ to: 'coaches', what: 'asks for review', version: 2 }],
    });
  });

  test.each<[string, PlanRecord, Partial<Settings>, { version: number; problemCount?: number }, object]>([
    ['an old version', draft, {}, { version: 1 }, { code: 'stale-version', facts: { named: 1, current: 2 } }],
    [
      'unread lines',
      draft,
      {},
      { version: 2, problemCount: 3 },
      { code: 'lines-unread', facts: { count: 3 } },
    ],
    ['twice', inReview, {}, { version: 2 }, { code: 'already-in-review', facts: { version: 2 } }],
    ['approved', approved, {}, { version: 2 }, { code: 'already-approved', facts: { version: 2 } }],
  ])('refuses %s', (_, record, change, step, refusal) => {
    const decision = decideStep(
      record,
      { kind: 'send', by: 'ines', at, ...step },
      { ...settings, ...change },
    );
    expect(decision).toEqual({ kind: 'refused', ...refusal });
  });

  test('names the setting that is missing', () => {
    const { reviewChannel: _, ...without } = settings;
    expect(decideStep(draft, { kind: 'send', by: 'ines', at, version: 2 }, without)).toEqual({
      kind: 'refused',
      code: 'setting-missing',
      facts: { setting: 'reviewChannel' },
    });
  });
});

describe('approving', () => {
  test('names the version and tells the author', () => {
    expect(decideStep(inReview, approve('mara'), settings)).toEqual({
      kind: 'done',
      record: { ...inReview, state: 'approved', approvedVersion: 2 },
      lifeStep: { kind: 'approved', version: 2, by: 'mara', at },
      tells: [{ to: 'author', what: 'approved', version: 2, by: 'mara' }],
    });
  });

  test('is for head coaches alone, in every state', () => {
    for (const record of [draft, inReview, approved])
      for (const by of ['ines', 'timo', ''])
        expect(decideStep(record, approve(by), settings)).toMatchObject({ code: 'not-a-head-coach' });
  });

  test('needs the setting that says who may', () => {
    expect(decideStep(inReview, approve('mara'), defaultSettings)).toEqual({
      kind: 'refused',
      code: 'setting-missing',
      facts: { setting: 'headCoaches' },
    });
  });

  test.each([
    [['mara', 'jonas'], true, { code: 'own-plan', facts: { soleCoach: false } }],
    [['mara'], false, { code: 'own-plan', facts: { soleCoach: true } }],
    [['mara'], true, { kind: 'done' }],
  ])('of their own plan: coaches %j, setting %j', (headCoaches, soleCoachMayApproveOwn, expected) => {
    const own = { ...inReview, authorId: 'mara' };
    const decision = decideStep(own, approve('mara'), { ...settings, headCoaches, soleCoachMayApproveOwn });
    expect(decision).toMatchObject(expected);
  });

  test('of an older version is refused with the current one', () => {
    expect(decideStep({ ...inReview, currentVersion: 4 }, approve('mara', 3), settings)).toEqual({
      kind: 'refused',
      code: 'stale-version',
      facts: { named: 3, current: 4 },
    });
  });

  test('second of two coaches is refused with who came first', () => {
    const first = decideStep(inReview, approve('mara'), settings);
    if (first.kind !== 'done' || first.lifeStep === undefined) throw new Error('the first coach may');
    const history = [first.lifeStep];
    const told = { step: 'approved', by: 'mara', at, version: 2 };
    const asks: PlanStep = { kind: 'ask changes', by: 'jonas', at, version: 2, reason: 'longer warm-up' };
    for (const second of [approve('jonas'), asks])
      expect(decideStep(first.record, second, settings, history)).toEqual({
        kind: 'refused',
        code: 'already-decided',
        facts: told,
      });
  });

  test('of a draft is refused', () => {
    expect(decideStep(draft, approve('mara'), settings)).toMatchObject({
      code: 'not-in-review',
      facts: { state: 'draft' },
    });
  });
});

describe('asking for changes and withdrawing', () => {
  const ask = (reason: string): PlanStep => ({ kind: 'ask changes', by: 'mara', at, version: 2, reason });

  test('takes the plan back to a draft with the reason', () => {
    const lifeStep: LifeStep = { kind: 'changes asked', version: 2, by: 'mara', at, reason: 'more pull' };
    expect(decideStep(inReview, ask(' more pull '), settings)).toEqual({
      kind: 'done',
      record: draft,
      lifeStep,
      tells: [{ to: 'author', what: 'changes asked', version: 2, by: 'mara', reason: 'more pull' }],
    });
  });

  test('needs a reason', () => {
    expect(decideStep(inReview, ask('  '), settings)).toMatchObject({ code: 'reason-needed' });
  });

  test('is for head coaches alone', () => {
    expect(decideStep(inReview, { ...ask('more pull'), by: 'ines' }, settings)).toMatchObject({
      code: 'not-a-head-coach',
    });
  });

  test('withdrawing keeps an earlier approval', () => {
    const changed = { ...inReview, currentVersion: 3, approvedVersion: 2 };
    expect(decideStep(changed, { kind: 'withdraw', by: 'ines', at }, settings)).toEqual({
      kind: 'done',
      record: { ...changed, state: 'draft' },
      lifeStep: { kind: 'withdrawn', version: 3, by: 'ines', at },
      tells: [{ to: 'coaches', what: 'withdrawn', version: 3 }],
    });
  });

  test('withdrawing a draft is refused', () => {
    expect(decideStep(draft, { kind: 'withdraw', by: 'ines', at }, settings)).toMatchObject({
      code: 'not-in-review',
    });
  });
});

describe('whatever is done in whatever order', () => {
  const anyone = fc.constantFrom('ines', 'mara', 'jonas', 'timo');
  const version = fc.integer({ min: 1, max: 6 });
  const anyStep: fc.Arbitrary<PlanStep> = fc.oneof(
    fc.record({ kind: fc.constant('change' as const), by: anyone, at: fc.constant(at) }),
    fc.record({ kind: fc.constant('send' as const), by: anyone, at: fc.constant(at), version }),
    fc.record({ kind: fc.constant('approve' as const), by: anyone, at: fc.constant(at), version }),
    fc.record({
      kind: fc.constant('ask changes' as const),
      by: anyone,
      at: fc.constant(at),
      version,
      reason: fc.constantFrom('', 'more pull'),
    }),
    fc.record({ kind: fc.constant('withdraw' as const), by: anyone, at: fc.constant(at) }),
  );

  test('approved is only the current version, by a head coach who is not its author', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('ines', 'mara'),
        fc.array(anyStep, { maxLength: 30 }),
        (authorId, steps) => {
          let record: PlanRecord = { ...draft, authorId, currentVersion: 1 };
          const history: LifeStep[] = [];
          for (const step of steps) {
            const decision = decideStep(record, step, settings, history);
            if (decision.kind === 'refused') continue;
            const approvedNow = decision.record.approvedVersion !== record.approvedVersion;
            record = decision.record;
            if (decision.lifeStep !== undefined) history.push(decision.lifeStep);
            if (approvedNow) {
              expect(step).toMatchObject({ kind: 'approve', version: record.currentVersion });
              expect(settings.headCoaches).toContain(step.by);
              expect(step.by).not.toBe(authorId);
            }
            if (record.state === 'approved') expect(record.approvedVersion).toBe(record.currentVersion);
            if (step.kind === 'change') expect(record.state).not.toBe('approved');
          }
        },
      ),
      { numRuns: 1_000 },
    );
  });
});

describe('trust', () => {
  const trusting: Settings = { ...settings, trustedInstructors: ['ines'] };
  const byTrust = (by: string, findings: number, version = 2): PlanStep => ({
    kind: 'approve by trust',
    by,
    at,
    version,
    findings,
    note: 'clean',
  });

  test('approves an own plan in which nothing is found', () => {
    expect(decideStep(inReview, byTrust('ines', 0), trusting)).toEqual({
      kind: 'done',
      record: approved,
      lifeStep: { kind: 'approved', version: 2, by: 'ines', at, reason: 'clean' },
      tells: [{ to: 'coaches', what: 'approved by trust', version: 2 }],
    });
  });

  test.each<[string, PlanRecord, PlanStep, Settings]>([
    ['with a finding', inReview, byTrust('ines', 1), trusting],
    ['by nobody trusted', inReview, byTrust('ines', 0), settings],
    ['of another’s plan', { ...inReview, authorId: 'ben' }, byTrust('ines', 0), trusting],
    ['of a draft', draft, byTrust('ines', 0), trusting],
    ['of an earlier version', inReview, byTrust('ines', 0, 1), trusting],
  ])('%s approves nothing', (_what, record, step, given) => {
    expect(decideStep(record, step, given).kind).toBe('refused');
  });
});

describe('a change of an approved plan', () => {
  const small: Settings = { ...settings, smallEditsKeepApproval: true };
  test.each([
    ['same class', settings, 'approved'],
    ['same class', small, 'approved'],
    ['small', settings, 'in review'],
    ['small', small, 'approved'],
    ['large', small, 'in review'],
  ] as const)('%s, by the studio’s setting', (size, given, state) => {
    const decision = decideStep(approved, { kind: 'change', by: 'ines', at, size }, given);
    expect(decision).toMatchObject({
      record: { state, currentVersion: 3, approvedVersion: state === 'approved' ? 3 : 2 },
    });
  });

  test('with lines nobody can read is never kept', () => {
    const step = { kind: 'change', by: 'ines', at, size: 'small', problemCount: 1 } as const;
    expect(decideStep(approved, step, small)).toMatchObject({
      record: { state: 'draft', approvedVersion: 2 },
    });
  });
});
