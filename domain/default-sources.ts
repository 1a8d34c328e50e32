import type {
  CheckSettings,
  DoseSettings,
  FloorSettings,
  RetentionSettings,
  Settings,
  TransitionSettings,
} from './settings.ts';

/** Where a default comes from: a publication, a trade habit, or nothing since each studio says it itself. */
export type DefaultSource =
  | { readonly kind: 'published'; readonly source: string }
  | { readonly kind: 'common practice'; readonly note?: string }
  | { readonly kind: 'ours'; readonly note: string }
  | { readonly kind: 'set by the studio' };

type Grouped = {
  readonly transitions: Readonly<Record<keyof TransitionSettings, DefaultSource>>;
  readonly floors: Readonly<Record<keyof FloorSettings, DefaultSource>>;
  readonly checks: Readonly<Record<keyof CheckSettings, DefaultSource>>;
  readonly dose: Readonly<Record<keyof DoseSettings, DefaultSource>>;
  readonly retention: Readonly<Record<keyof RetentionSettings, DefaultSource>>;
};

type DefaultSources = Readonly<Record<Exclude<keyof Settings, keyof Grouped>, DefaultSource>> & Grouped;

const practice: DefaultSource = { kind: 'common practice' };
const studio: DefaultSource = { kind: 'set by the studio' };
const habit = (note: string): DefaultSource => ({ kind: 'common practice', note });
const published = (source: string): DefaultSource => ({ kind: 'published', source });
const ours = (note: string): DefaultSource => ({ kind: 'ours', note });

const noNorm = habit('no norm for change-over times is published');
const leastKept = ours('as short as the job allows');

/** One source a setting; the compiler asks for a new one's. */
export const defaultSources: DefaultSources = {
  zone: studio,
  reviewChannel: studio,
  teamChannel: studio,
  headCoaches: studio,
  admins: studio,
  trustedInstructors: studio,
  roleGroups: studio,
  smallEditsKeepApproval: ours('every edit is looked at until a studio says otherwise'),
  soleCoachMayApproveOwn: ours('nobody approves their own plan until a studio says so'),
  rooms: studio,
  sharedKit: studio,
  slots: studio,
  slotHabits: studio,
  defaultSlotSeconds: practice,
  countInSeconds: practice,
  nextCueSeconds: practice,
  countdownMinutes: practice,
  countdownPosts: ours('one message a class, updated'),
  digestTime: practice,
  publicUrl: { kind: 'set by the studio' },
  reportAt: practice,
  transitions: {
    putDownSeconds: noNorm,
    pickUpSeconds: noNorm,
    swapSeconds: noNorm,
    standKneelSeconds: noNorm,
    standFloorSeconds: noNorm,
    floorTurnSeconds: noNorm,
    sideSeconds: noNorm,
    firstRoundExtraSeconds: noNorm,
    factor: ours('1 until a studio’s own classes say otherwise'),
  },
  factorMove: ours('steps of 0.05 between 0.8 and 1.3, each after five classes or more'),
  floors: {
    leastWarmUpSeconds: published('ACSM: warm-up of 5–10 minutes; the shorter end'),
    leastCoolDownSeconds: published('ACSM: cool-down of 5–10 minutes; the shorter end'),
    leastRestSeconds: practice,
  },
  checks: {
    lateStartShareOfBout: practice,
    lateStartSecondsOfBout: practice,
    unusedShareOfTeachingTime: practice,
    longCoolDownSeconds: published('ACSM: cool-down of 5–10 minutes; the longer end'),
    jumpsFreeSeconds: practice,
    gripBoutSeconds: practice,
    allOutBeginnersSeconds: practice,
    loadedNonStopBeginnersSeconds: practice,
    squareMetresAPerson: published(
      '45 sq ft a person: trade body question-and-answer page, 2010; posted capacity by fire code comes first',
    ),
    squareMetresAPersonMoving: practice,
    floorChangesAMinute: practice,
    newMoves: practice,
    explainNewMoveSeconds: practice,
    heavyCompoundRestSeconds: published(
      'Ratamess NA et al. (ACSM), Med Sci Sports Exerc 2009;41:687–708: 2–3 min for core lifts; the shorter end',
    ),
    supineLongSeconds: practice,
    rowBreakSeconds: practice,
    rowBoutSeconds: practice,
    floorTurnsAMinute: practice,
    floorChangesLeast: practice,
    breakBetweenBlocksSeconds: practice,
    pushPullRatio: habit('no norm for push : pull sets is published'),
    pushPullSets: habit('no norm for push : pull sets is published'),
    recoverySets: habit('the 48 hours themselves: Garber CE et al., Med Sci Sports Exerc 2011;43:1334–59'),
    longClassSeconds: practice,
    heavyRpe: practice,
    knownMovesLeast: practice,
    wipeSeconds: practice,
  },
  dose: {
    low: published('Iversen VM et al., Sports Med 2021;51:2079–95: at least 4 weekly sets a muscle'),
    high: published('ACSM position stand 2026: 10 or more weekly sets a muscle'),
    veryHigh: published('Baz-Valle E et al., J Hum Kinet 2022;81:199–210: more than 20 is high'),
  },
  firstPriority: practice,
  mainLifts: practice,
  energyOn: ours('off until a studio turns it on; never in the team channel'),
  retention: {
    deliveryKeyDays: leastKept,
    unsentDraftDays: leastKept,
    sentPayloadDays: leastKept,
    commentDays: leastKept,
    planDays: ours('two years; then without the person'),
  },
  ownMoves: studio,
  ownNames: studio,
};
