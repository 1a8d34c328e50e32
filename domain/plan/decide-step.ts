import type { PersonId } from '../calendar/scheduled-class.ts';
import type { Settings } from '../settings.ts';
import { isHeadCoach, mayChangePlan } from '../who-may.ts';
import type { LifeStep, LifeStepKind, PlanRecord, PlanState } from './plan-life.ts';
import type { ChangeSize } from './size-of-change.ts';

type Act = { readonly by: PersonId; readonly at: string };

/** What someone wants to do with a plan. `version` is the one they looked at; `at` an ISO instant. */
export type PlanStep = Act &
  (
    | {
        /** A new version: written, edited, undone or redone. `problemCount`: lines of it that can't be read. */
        readonly kind: 'change';
        readonly problemCount?: number;
        /** Against the version a coach approved last. */
        readonly size?: ChangeSize;
        /** Kept with an approval that stays. */
        readonly note?: string;
      }
    | {
        readonly kind: 'approve by trust';
        readonly version: number;
        /** Findings that must be fixed or looked at. */
        readonly findings: number;
        readonly note?: string;
      }
    | { readonly kind: 'send'; readonly version: number; readonly problemCount?: number }
    | { readonly kind: 'approve'; readonly version: number; readonly note?: string }
    | { readonly kind: 'ask changes'; readonly version: number; readonly reason: string }
    | { readonly kind: 'withdraw' }
  );

/** Who is to hear of a step, and what. `since` is the version that the difference is shown against. */
type Tell =
  | {
      readonly to: 'coaches';
      readonly what: 'asks for review';
      readonly version: number;
      readonly since?: number;
    }
  | {
      readonly to: 'coaches';
      readonly what: 'changed in review';
      readonly version: number;
      readonly since: number;
    }
  | {
      readonly to: 'coaches';
      readonly what: 'small change';
      readonly version: number;
      readonly since: number;
    }
  | { readonly to: 'coaches'; readonly what: 'withdrawn' | 'approved by trust'; readonly version: number }
  | { readonly to: 'author'; readonly what: 'approved'; readonly version: number; readonly by: PersonId }
  | {
      readonly to: 'author';
      readonly what: 'changes asked';
      readonly version: number;
      readonly by: PersonId;
      readonly reason: string;
    };

/** Not allowed, stale, or in the wrong state; told to the person who asked. */
export type Refusal =
  | {
      readonly code: 'setting-missing';
      readonly facts: { readonly setting: 'headCoaches' | 'reviewChannel' };
    }
  | { readonly code: 'not-a-head-coach'; readonly facts: Record<never, never> }
  | {
      readonly code: 'own-plan';
      /** True where the studio has one coach only, so that a setting would allow it. */
      readonly facts: { readonly soleCoach: boolean };
    }
  | { readonly code: 'not-your-plan'; readonly facts: { readonly authorId: PersonId } }
  | { readonly code: 'stale-version'; readonly facts: { readonly named: number; readonly current: number } }
  | {
      readonly code: 'already-decided';
      readonly facts: {
        readonly step: Exclude<LifeStepKind, 'sent' | 'changed after approval'>;
        readonly by: PersonId;
        readonly at: string;
        readonly version: number;
      };
    }
  | { readonly code: 'already-in-review'; readonly facts: { readonly version: number } }
  | { readonly code: 'not-in-review'; readonly facts: { readonly state: PlanState } }
  | { readonly code: 'already-approved'; readonly facts: { readonly version: number } }
  | { readonly code: 'lines-unread'; readonly facts: { readonly count: number } }
  | { readonly code: 'reason-needed'; readonly facts: Record<never, never> };

type Refused = { readonly kind: 'refused' } & Refusal;

export type Decision =
  | {
      readonly kind: 'done';
      readonly record: PlanRecord;
      /** Absent where only a version was added, which keeps its own who and when. */
      readonly lifeStep?: LifeStep;
      readonly tells: readonly Tell[];
    }
  | Refused;

/**
 * Decides one step in the life of a plan; changes nothing itself. `history` are the steps so far, oldest
 * first: with them, a step that comes second is refused with who came first.
 */
export function decideStep(
  record: PlanRecord,
  step: PlanStep,
  settings: Settings,
  history: readonly LifeStep[] = [],
): Decision {
  switch (step.kind) {
    case 'change':
      return change(record, step, settings);
    case 'send':
      return send(record, step, settings);
    case 'approve':
      return approve(record, step, settings, history);
    case 'approve by trust':
      return approveByTrust(record, step, settings);
    case 'ask changes':
      return askChanges(record, step, settings, history);
    case 'withdraw':
      return withdraw(record, step, settings, history);
  }
}

type StepOf<Kind extends PlanStep['kind']> = Extract<PlanStep, { readonly kind: Kind }>;

/** A draft stays one, a review goes on with the new version, an approved plan goes back to review. */
function change(record: PlanRecord, step: StepOf<'change'>, settings: Settings): Decision {
  const barred = whyNotTheirs(record, step.by, settings);
  if (barred !== undefined) return refuse(barred);
  const version = record.currentVersion + 1;
  const next: PlanRecord = { ...record, currentVersion: version };
  if (record.state === 'draft') return { kind: 'done', record: next, tells: [] };
  if ((step.problemCount ?? 0) > 0) return takenBackToDraft(next, step);
  if (record.state === 'in review') {
    const tell: Tell = { to: 'coaches', what: 'changed in review', version, since: record.currentVersion };
    return { kind: 'done', record: next, tells: [tell] };
  }
  if (keepsApproval(step, settings))
    return {
      kind: 'done',
      record: { ...next, approvedVersion: version },
      lifeStep: { ...stepAt('approved', step, version), ...noteOf(step) },
      tells:
        step.size === 'small'
          ? [{ to: 'coaches', what: 'small change', version, since: record.currentVersion }]
          : [],
    };
  return {
    kind: 'done',
    record: { ...next, state: 'in review' },
    lifeStep: stepAt('changed after approval', step, version),
    tells: [asksForReview(record, version)],
  };
}

/** The same class on another day stays approved; a small change where the studio says so. */
function keepsApproval({ size }: StepOf<'change'>, { smallEditsKeepApproval }: Settings): boolean {
  return size === 'same class' || (size === 'small' && smallEditsKeepApproval === true);
}

/** By exception: a trusted instructor's own plan with nothing found needs no coach. */
function approveByTrust(record: PlanRecord, step: StepOf<'approve by trust'>, settings: Settings): Decision {
  const { version, by } = step;
  const isTrusted = by === record.authorId && settings.trustedInstructors?.includes(by) === true;
  if (!isTrusted || step.findings > 0 || record.state !== 'in review')
    return refuse({ code: 'not-a-head-coach', facts: {} });
  const stale = whyStale(record, version);
  if (stale !== undefined) return refuse(stale);
  return {
    kind: 'done',
    record: { ...record, state: 'approved', approvedVersion: version },
    lifeStep: { ...stepAt('approved', step, version), ...noteOf(step) },
    tells: [{ to: 'coaches', what: 'approved by trust', version }],
  };
}

/** What can't be read can't be reviewed: it waits as a draft until its lines are put right and it is sent. */
function takenBackToDraft(next: PlanRecord, step: StepOf<'change'>): Decision {
  const version = next.currentVersion;
  const kind = next.state === 'approved' ? 'changed after approval' : 'withdrawn';
  return {
    kind: 'done',
    record: { ...next, state: 'draft' },
    lifeStep: stepAt(kind, step, version),
    tells: kind === 'withdrawn' ? [{ to: 'coaches', what: 'withdrawn', version }] : [],
  };
}

function send(record: PlanRecord, step: StepOf<'send'>, settings: Settings): Decision {
  const barred =
    whyNotTheirs(record, step.by, settings) ??
    whySettingMissing('reviewChannel', settings.reviewChannel !== undefined) ??
    whyNotToSend(record) ??
    whyStale(record, step.version) ??
    whyUnread(step.problemCount ?? 0);
  if (barred !== undefined) return refuse(barred);
  return {
    kind: 'done',
    record: { ...record, state: 'in review' },
    lifeStep: stepAt('sent', step, step.version),
    tells: [asksForReview(record, step.version)],
  };
}

function approve(
  record: PlanRecord,
  step: StepOf<'approve'>,
  settings: Settings,
  history: readonly LifeStep[],
): Decision {
  const barred =
    whyNotCoach(step.by, settings) ??
    whyOwnPlan(record, step.by, settings) ??
    whyNotInReview(record, history) ??
    whyStale(record, step.version);
  if (barred !== undefined) return refuse(barred);
  const { version, by } = step;
  return {
    kind: 'done',
    record: { ...record, state: 'approved', approvedVersion: version },
    lifeStep: { ...stepAt('approved', step, version), ...noteOf(step) },
    tells: [{ to: 'author', what: 'approved', version, by }],
  };
}

function askChanges(
  record: PlanRecord,
  step: StepOf<'ask changes'>,
  settings: Settings,
  history: readonly LifeStep[],
): Decision {
  const reason = step.reason.trim();
  const barred =
    whyNotCoach(step.by, settings) ??
    whyNotInReview(record, history) ??
    whyStale(record, step.version) ??
    whyNoReason(reason);
  if (barred !== undefined) return refuse(barred);
  const { version, by } = step;
  return {
    kind: 'done',
    record: { ...record, state: 'draft' },
    lifeStep: { ...stepAt('changes asked', step, version), reason },
    tells: [{ to: 'author', what: 'changes asked', version, by, reason }],
  };
}

function withdraw(
  record: PlanRecord,
  step: StepOf<'withdraw'>,
  settings: Settings,
  history: readonly LifeStep[],
): Decision {
  const barred = whyNotTheirs(record, step.by, settings) ?? whyNotInReview(record, history);
  if (barred !== undefined) return refuse(barred);
  const version = record.currentVersion;
  return {
    kind: 'done',
    record: { ...record, state: 'draft' },
    lifeStep: stepAt('withdrawn', step, version),
    tells: [{ to: 'coaches', what: 'withdrawn', version }],
  };
}

function stepAt(kind: LifeStepKind, { by, at }: Act, version: number): LifeStep {
  return { kind, version, by, at };
}

function noteOf({ note = '' }: { readonly note?: string }): Pick<LifeStep, 'reason'> {
  const reason = note.trim();
  return reason === '' ? {} : { reason };
}

function asksForReview({ approvedVersion }: PlanRecord, version: number): Tell {
  const since = approvedVersion === undefined ? {} : { since: approvedVersion };
  return { to: 'coaches', what: 'asks for review', version, ...since };
}

function refuse(refusal: Refusal): Refused {
  return { kind: 'refused', ...refusal };
}

/** Why someone can't change this plan at all; undefined where they can. */
export function whyNotTheirs(record: PlanRecord, by: PersonId, settings: Settings): Refusal | undefined {
  const { authorId } = record;
  return mayChangePlan(settings, record, by) ? undefined : { code: 'not-your-plan', facts: { authorId } };
}

function whySettingMissing(setting: 'headCoaches' | 'reviewChannel', isSet: boolean): Refusal | undefined {
  return isSet ? undefined : { code: 'setting-missing', facts: { setting } };
}

/** Why someone is not the one to review; undefined where they are. */
export function whyNotCoach(by: PersonId, settings: Settings): Refusal | undefined {
  if (settings.headCoaches.length === 0) return whySettingMissing('headCoaches', false);
  return isHeadCoach(settings, by) ? undefined : { code: 'not-a-head-coach', facts: {} };
}

function whyOwnPlan(record: PlanRecord, by: PersonId, settings: Settings): Refusal | undefined {
  if (by !== record.authorId) return undefined;
  const soleCoach = settings.headCoaches.every((coach) => coach === by);
  if (soleCoach && settings.soleCoachMayApproveOwn) return undefined;
  return { code: 'own-plan', facts: { soleCoach } };
}

function whyNotToSend({ state, currentVersion: version }: PlanRecord): Refusal | undefined {
  switch (state) {
    case 'draft':
      return undefined;
    case 'in review':
      return { code: 'already-in-review', facts: { version } };
    case 'approved':
      return { code: 'already-approved', facts: { version } };
  }
}

function whyNotInReview(record: PlanRecord, history: readonly LifeStep[]): Refusal | undefined {
  const { state } = record;
  if (state === 'in review') return undefined;
  const last = history.at(-1);
  if (last === undefined || last.kind === 'sent' || last.kind === 'changed after approval')
    return { code: 'not-in-review', facts: { state } };
  const { kind: step, by, at, version } = last;
  return { code: 'already-decided', facts: { step, by, at, version } };
}

function whyStale({ currentVersion: current }: PlanRecord, named: number): Refusal | undefined {
  return named === current ? undefined : { code: 'stale-version', facts: { named, current } };
}

function whyUnread(count: number): Refusal | undefined {
  return count === 0 ? undefined : { code: 'lines-unread', facts: { count } };
}

function whyNoReason(reason: string): Refusal | undefined {
  return reason === '' ? { code: 'reason-needed', facts: {} } : undefined;
}
