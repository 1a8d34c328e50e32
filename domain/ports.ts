import type {
  ClassId,
  ClassState,
  Outcome,
  PersonId,
  PlanId,
  ScheduledClass,
} from './calendar/scheduled-class.ts';
import type { MoveId } from './catalogue/move.ts';
import type { Muscle } from './catalogue/muscles.ts';
import type { Plan } from './plan/plan.ts';
import type { Home, LifeStep, PlanComment, PlanRecord, VersionCause } from './plan/plan-life.ts';
import type { RetentionSettings, Settings } from './settings.ts';
import type { SaidWeek, SayingDecision } from './week/sayings.ts';
import type { ToldWeek } from './week/told-week.ts';

export type StudioId = string;

/** A version as stored: never rewritten. Load rows and finding codes are as told then. */
export type PlanVersion = {
  readonly planId: PlanId;
  readonly version: number;
  /** The class as text: as typed, or as printed after an edit. */
  readonly text: string;
  /** What could be read; absent where nothing could. */
  readonly plan?: Plan;
  readonly problemCount: number;
  readonly catalogueEdition: string;
  readonly totalSeconds: number;
  readonly load: readonly MuscleLoad[];
  readonly setsByPattern: Readonly<Record<string, number>>;
  readonly findingCodes: readonly string[];
  readonly madeBy: PersonId;
  readonly madeAt: string;
  readonly cause: VersionCause;
};

export type MuscleLoad = { readonly muscle: Muscle; readonly sets: number; readonly tensionSeconds: number };

type Studio = { readonly id: StudioId; readonly name: string; readonly createdAt: string };

export type StudioStore = {
  save(studio: Studio): Promise<void>;
  find(studioId: StudioId): Promise<Studio | undefined>;
  list(): Promise<readonly Studio[]>;
};

/** What the product keeps of staff: the workspace's id and the roles given in the product. */
type Person = {
  readonly id: PersonId;
  readonly roles: readonly ('head coach' | 'instructor' | 'admin')[];
};

export type PeopleStore = {
  save(studioId: StudioId, person: Person): Promise<void>;
  find(studioId: StudioId, personId: PersonId): Promise<Person | undefined>;
  list(studioId: StudioId): Promise<readonly Person[]>;
};

export type SettingsStore = {
  /** `fingerprint` of the settings file last applied, so that a changed file is noticed. */
  save(studioId: StudioId, settings: Settings, fingerprint: string, at: string): Promise<void>;
  find(
    studioId: StudioId,
  ): Promise<{ readonly settings: Settings; readonly fingerprint: string } | undefined>;
};

/** A plan and its current version are saved in one transaction: neither stands without the other. */
export type PlanStore = {
  create(studioId: StudioId, record: PlanRecord): Promise<void>;
  update(studioId: StudioId, record: PlanRecord): Promise<void>;
  find(studioId: StudioId, planId: PlanId): Promise<PlanRecord | undefined>;
  findByHome(studioId: StudioId, home: Home): Promise<PlanRecord | undefined>;
  /** Newest first. */
  listByAuthor(studioId: StudioId, authorId: PersonId, limit: number): Promise<readonly PlanRecord[]>;
  /** Oldest first. */
  listByState(studioId: StudioId, state: PlanRecord['state']): Promise<readonly PlanRecord[]>;
  /** Safe to repeat; a second version of the same number with other content is a bug and throws. */
  addVersion(studioId: StudioId, version: PlanVersion): Promise<void>;
  findVersion(studioId: StudioId, planId: PlanId, version: number): Promise<PlanVersion | undefined>;
  listVersions(studioId: StudioId, planId: PlanId): Promise<readonly PlanVersion[]>;
  dismissFinding(
    studioId: StudioId,
    planId: PlanId,
    code: string,
    by: PersonId,
    reason: string,
    at: string,
  ): Promise<void>;
  /** Codes, in the order dismissed. */
  listDismissed(studioId: StudioId, planId: PlanId): Promise<readonly string[]>;
};

export type ClassStore = {
  /** Adds the class or replaces it whole. */
  save(studioId: StudioId, scheduled: ScheduledClass): Promise<void>;
  find(studioId: StudioId, classId: ClassId): Promise<ScheduledClass | undefined>;
  findByPlan(studioId: StudioId, planId: PlanId): Promise<readonly ScheduledClass[]>;
  /** Classes that start in [fromInstant, toInstant), in order of start. */
  listBetween(studioId: StudioId, fromInstant: string, toInstant: string): Promise<readonly ScheduledClass[]>;
  /** State and outcome are replaced together: without an outcome none is kept. */
  setState(studioId: StudioId, classId: ClassId, state: ClassState, outcome?: Outcome): Promise<void>;
  /**
   * The load counted for a taught class, fixed when it is marked; a new catalogue changes none of it. With
   * it the moves of the plan's approved version, else its current one, are noted as taught. Replaces what
   * was saved for this class; a class marked otherwise later counts for nothing.
   */
  saveLoad(
    studioId: StudioId,
    classId: ClassId,
    load: readonly MuscleLoad[],
    setsByPattern: Readonly<Record<string, number>>,
  ): Promise<void>;
  /** Only of classes that are marked taught, in order of start; each load largest first. */
  listLoadBetween(
    studioId: StudioId,
    fromInstant: string,
    toInstant: string,
  ): Promise<
    readonly {
      readonly classId: ClassId;
      readonly load: readonly MuscleLoad[];
      readonly setsByPattern: Readonly<Record<string, number>>;
    }[]
  >;
  /** Ids of all moves of classes whose load was counted at this studio. */
  listMovesTaught(studioId: StudioId): Promise<ReadonlySet<MoveId>>;
};

export type ReviewStore = {
  /** Safe to repeat: the same step is kept once. */
  add(studioId: StudioId, planId: PlanId, step: LifeStep): Promise<void>;
  list(studioId: StudioId, planId: PlanId): Promise<readonly LifeStep[]>;
};

export type CommentStore = {
  /** Safe to repeat: a comment is kept once. */
  add(studioId: StudioId, comment: PlanComment): Promise<void>;
  find(studioId: StudioId, commentId: string): Promise<PlanComment | undefined>;
  /** In the order made, resolved ones too. */
  list(studioId: StudioId, planId: PlanId): Promise<readonly PlanComment[]>;
  /** The first to resolve it counts. */
  resolve(studioId: StudioId, commentId: string, by: PersonId, at: string): Promise<void>;
};

/** What a notice asks of the sender. `payload` is the ready call, without channel and thread. */
export type NoticePayload = {
  readonly text: string;
  readonly blocks?: readonly unknown[];
  readonly fallbackBlocks?: readonly unknown[];
  /** Shown in the place of a native chart that the workspace refuses, before `fallbackBlocks`. */
  readonly picture?: { readonly name: string; readonly svg: string; readonly altText: string };
  /** Posted as a file with `title`; where that fails, the message stands in its place. */
  readonly file?: { readonly name: string; readonly title: string; readonly content: string };
};

export type Notice = {
  /** Unique in the studio; names the cause, so a second enqueueing is no second post. */
  readonly key: string;
  /** Channel or person the post goes to. */
  readonly to: string;
  readonly action:
    | { readonly kind: 'post'; readonly thread?: ThreadRef }
    /** Changes the message an earlier notice posted. */
    | { readonly kind: 'update'; readonly of: string };
  readonly payload: NoticePayload;
  readonly causedAt: string;
};

/** A thread by the message's own stamp, or by the key of the notice that opens it. */
export type ThreadRef = { readonly stamp: string } | { readonly noticeKey: string };

export type NoticeState = 'pending' | 'sending' | 'sent' | 'dead';

export type StoredNotice = Notice & {
  readonly sequence: number;
  readonly state: NoticeState;
  readonly attempts: number;
  readonly retryAt?: string;
  /** Where it landed: the real channel and the message's stamp. */
  readonly sentTo?: { readonly place: string; readonly stamp: string };
  readonly lastError?: string;
};

/** pending → sending → sent | dead; a retry goes back to pending. A mark that is repeated changes nothing. */
export type NoticeStore = {
  /** False where the key is known already, or where it goes to a person who is forgotten; nothing is changed then. */
  enqueue(studioId: StudioId, notice: Notice): Promise<boolean>;
  find(studioId: StudioId, key: string): Promise<StoredNotice | undefined>;
  findBySentTo(studioId: StudioId, place: string, stamp: string): Promise<StoredNotice | undefined>;
  /** Pending (its retry due or not: see `retryAt`) and sending notices in the order to send: by sequence. */
  listUnfinished(studioId: StudioId, limit: number): Promise<readonly StoredNotice[]>;
  /** How many are unfinished, and what the oldest was caused at; undefined where none is. */
  measureUnfinished(
    studioId: StudioId,
  ): Promise<{ readonly count: number; readonly oldestCausedAt: string } | undefined>;
  /** Counts an attempt. */
  markSending(studioId: StudioId, key: string, at: string): Promise<void>;
  markSent(
    studioId: StudioId,
    key: string,
    sentTo: { readonly place: string; readonly stamp: string },
    at: string,
  ): Promise<void>;
  markRetry(studioId: StudioId, key: string, retryAt: string, error: string): Promise<void>;
  markDead(studioId: StudioId, key: string, error: string, at: string): Promise<void>;
};

/** An incoming delivery, kept with its body until the change it causes is done. */
export type Delivery = {
  readonly key: string;
  readonly kind: 'event' | 'interaction';
  readonly body: string;
  readonly receivedAt: string;
};

export type DeliveryStore = {
  /**
   * False where this key has come before. With `doneAt` it is done by the transaction it is received in, and
   * its body is not kept.
   */
  receive(studioId: StudioId, delivery: Delivery & { readonly doneAt?: string }): Promise<boolean>;
  /** The body goes; the key stays, so that a second delivery of it is known. */
  markDone(studioId: StudioId, key: string, at: string): Promise<void>;
  /** In the order received. */
  listUnfinished(studioId: StudioId): Promise<readonly Delivery[]>;
};

/** What the timetable needs beside the classes. */
export type TimetableStore = {
  /** Up to which instant (inclusive) what fell due was looked at; a clock set back takes it back. */
  keepLookedAt(studioId: StudioId, at: string): Promise<void>;
  findLookedAt(studioId: StudioId): Promise<string | undefined>;
  /** Notes what of this is listed as missed; those not noted before come back. */
  keepMissedTold(studioId: StudioId, missed: readonly string[], at: string): Promise<readonly string[]>;
  /** The secret part of the calendar feed's address; a new one ends the one before. */
  saveFeedToken(studioId: StudioId, token: string, at: string): Promise<void>;
  findFeedToken(studioId: StudioId): Promise<string | undefined>;
  /** The studio whose feed has this token: the one door that is opened without knowing the studio. */
  findStudioOfFeed(token: string): Promise<StudioId | undefined>;
};

export type WeekReportStore = {
  /** Adds what a week's report told; after a correction it replaces it. */
  save(studioId: StudioId, week: string, told: ToldWeek, at: string): Promise<void>;
  find(studioId: StudioId, week: string): Promise<ToldWeek | undefined>;
  /** Reports on earlier weeks, newest first. */
  listBefore(studioId: StudioId, week: string, limit: number): Promise<readonly SaidWeek[]>;
  /** A later answer about the same saying replaces the earlier one. */
  decide(studioId: StudioId, decision: SayingDecision, at: string): Promise<void>;
  /** In order of the saying. */
  listDecisions(studioId: StudioId): Promise<readonly SayingDecision[]>;
};

/** Notices to a person that can be switched off; the others are answers, or somebody waits for them. */
export const noticeKinds = ['how it went', 'before a class', 'plans that wait'] as const;
export type NoticeKind = (typeof noticeKinds)[number];

/** What is kept of one person, in numbers and titles. */
export type PersonData = {
  readonly plans: readonly { readonly title?: string; readonly state: PlanRecord['state'] }[];
  readonly versions: number;
  readonly steps: number;
  readonly comments: number;
  readonly classes: number;
  readonly notices: number;
};

/** In whose place a person stands who is forgotten. */
export const forgottenPerson = 'forgotten';
/** What stands in texts where they were mentioned; a notice that is still to be sent says it in words. */
export const forgottenMention = '@forgotten';

/** What a studio keeps: how long, for whom, and that it goes. */
export type CareStore = {
  /** The kinds a person has switched off. */
  listSwitchedOff(studioId: StudioId, personId: PersonId): Promise<ReadonlySet<NoticeKind>>;
  switchOff(studioId: StudioId, personId: PersonId, kinds: readonly NoticeKind[]): Promise<void>;
  collectPerson(studioId: StudioId, personId: PersonId): Promise<PersonData>;
  /**
   * Deletes the person's drafts, comments and messages; puts `forgottenPerson` in their place everywhere else.
   * Load, counts and approvals stay. `places`: their direct messages, as far as the caller knows them. Done
   * again by a restore.
   */
  forgetPerson(studioId: StudioId, personId: PersonId, places: readonly string[], at: string): Promise<void>;
  /** Lets go what is older than the settings say. */
  retain(studioId: StudioId, limits: RetentionSettings, now: string): Promise<void>;
  /** When the data was last looked after, and since when the studio has left. */
  findCare(studioId: StudioId): Promise<{ readonly caredAt?: string; readonly leftAt?: string }>;
  markCared(studioId: StudioId, at: string): Promise<void>;
  /** Undefined for a studio that is here again. What was still to be sent is given up where it leaves. */
  markLeft(studioId: StudioId, at: string | undefined): Promise<void>;
  /** Everything of the studio but its id goes. */
  deleteStudio(studioId: StudioId): Promise<void>;
  /** Every row of the studio by table, its JSON as data. */
  exportStudio(studioId: StudioId): Promise<Readonly<Record<string, readonly unknown[]>>>;
};

/** Who is in the user groups that give a role: as the workspace said it last. */
export type UserGroupStore = {
  /** In place of those it had. Who was forgotten is left out: a group gives them no role again. */
  saveMembers(studioId: StudioId, groupId: string, members: readonly PersonId[]): Promise<void>;
  removeMembers(studioId: StudioId, groupId: string, members: readonly PersonId[]): Promise<void>;
  /** By group; one without members is not in it. */
  listMembers(studioId: StudioId): Promise<ReadonlyMap<string, readonly PersonId[]>>;
  /** Lets go of all other groups: they give no role. */
  keepOnly(studioId: StudioId, groupIds: readonly string[]): Promise<void>;
};

/** Everything storage offers; every store takes the studio first. */
export type Stores = {
  readonly studios: StudioStore;
  readonly people: PeopleStore;
  readonly settings: SettingsStore;
  readonly plans: PlanStore;
  readonly classes: ClassStore;
  readonly reviews: ReviewStore;
  readonly comments: CommentStore;
  readonly notices: NoticeStore;
  readonly deliveries: DeliveryStore;
  readonly weekReports: WeekReportStore;
  readonly timetable: TimetableStore;
  readonly care: CareStore;
  readonly userGroups: UserGroupStore;
};

export type Storage = Stores & {
  /**
   * One immediate transaction: all of `work` or, where it throws, nothing. Inside it only the handle given
   * to `work` is used, and nothing else is waited for (no network, no timer); both throw.
   */
  inTransaction<Result>(work: (stores: Stores) => Promise<Result>): Promise<Result>;
  /**
   * True for a failure of storage that passes (no space, a foreign lock, a failing disk): the work may be
   * tried again.
   */
  isFault(error: unknown): boolean;
  close(): Promise<void>;
};
