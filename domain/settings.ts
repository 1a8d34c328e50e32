import type { KitItem } from './catalogue/kit.ts';
import type { Move } from './catalogue/move.ts';
import type { Muscle } from './catalogue/muscles.ts';

export type Weekday = 'Mon' | 'Tue' | 'Wed' | 'Thu' | 'Fri' | 'Sat' | 'Sun';

/** A room: kit in single pieces, capacity as posted by local rules, area in square metres. */
export type Room = {
  readonly name: string;
  readonly kit: Readonly<Partial<Record<KitItem, number>>>;
  readonly capacity?: number;
  readonly areaSquareMetres?: number;
  /** Door and clear-up time; the teaching time is the slot less these. */
  readonly doorSeconds: number;
  readonly clearUpSeconds: number;
  /** In the studio's own words; empty is a set-up step, never invented. */
  readonly emergencyCard?: string;
};

/** Kit on a trolley that several rooms use, beside what each has of its own; single pieces. */
export type SharedKit = {
  readonly item: KitItem;
  readonly pieces: number;
  /** Names of the rooms. */
  readonly rooms: readonly string[];
};

/** A slot of the weekly timetable, in the studio's zone. */
export type WeeklySlot = {
  readonly id: string;
  readonly name: string;
  readonly weekday: Weekday;
  readonly time: string;
  readonly seconds: number;
  readonly room?: string;
  readonly instructorId?: string;
  readonly people?: number;
};

/** A set of weekly slots one member might come to; never a person. */
export type SlotHabit = { readonly name: string; readonly slotIds: readonly string[] };

/** Seconds a change-over needs. */
export type TransitionSettings = {
  readonly putDownSeconds: number;
  readonly pickUpSeconds: number;
  readonly swapSeconds: number;
  readonly standKneelSeconds: number;
  readonly standFloorSeconds: number;
  readonly floorTurnSeconds: number;
  readonly sideSeconds: number;
  /** Added in a block's first round, while people still learn the order. */
  readonly firstRoundExtraSeconds: number;
  /** The studio's own factor, moved by feedback in small bounded steps. */
  readonly factor: number;
};

/** The last step of the factor, and what was said of the classes that moved it. */
export type FactorMove = {
  readonly at: string;
  readonly from: number;
  readonly to: number;
  readonly classes: number;
  readonly over: number;
  readonly short: number;
};

/** What nothing may cut below. */
export type FloorSettings = {
  readonly leastWarmUpSeconds: number;
  readonly leastCoolDownSeconds: number;
  readonly leastRestSeconds: number;
};

/** Weekly sets a muscle: none, low (< low), moderate, high (≥ high), very high (> veryHigh). */
export type DoseSettings = { readonly low: number; readonly high: number; readonly veryHigh: number };

/** Limits of the checks. */
export type CheckSettings = {
  readonly lateStartShareOfBout: number;
  readonly lateStartSecondsOfBout: number;
  readonly unusedShareOfTeachingTime: number;
  /** What a cool-down *to the end* takes beyond this counts as unused. */
  readonly longCoolDownSeconds: number;
  readonly jumpsFreeSeconds: number;
  readonly gripBoutSeconds: number;
  readonly allOutBeginnersSeconds: number;
  readonly loadedNonStopBeginnersSeconds: number;
  readonly squareMetresAPerson: number;
  readonly squareMetresAPersonMoving: number;
  readonly floorChangesAMinute: Readonly<Record<1 | 2 | 3, number>>;
  readonly newMoves: number;
  readonly explainNewMoveSeconds: number;
  readonly heavyCompoundRestSeconds: number;
  readonly supineLongSeconds: number;
  /** A gap of this length ends a row of neighbouring moves. */
  readonly rowBreakSeconds: number;
  /** Bouts shorter than this don't count towards a row of three. */
  readonly rowBoutSeconds: number;
  readonly floorTurnsAMinute: number;
  /** Fewer ups and downs, or turns, in a block than this are never told. */
  readonly floorChangesLeast: number;
  readonly breakBetweenBlocksSeconds: number;
  /** Told where one of push and pull has more than this many times the other's sets … */
  readonly pushPullRatio: number;
  /** … and at least this many sets more. */
  readonly pushPullSets: number;
  readonly recoverySets: number;
  /** Classes of this length are long: options for lying and for getting up are asked for. */
  readonly longClassSeconds: number;
  /** A rated effort from which a compound move counts as heavy (0–10). */
  readonly heavyRpe: number;
  /** A move is called new only once a studio has taught this many different ones. */
  readonly knownMovesLeast: number;
  readonly wipeSeconds: number;
};

/** After how long what is kept goes; days from when it was written, or a plan last changed. */
export type RetentionSettings = {
  readonly deliveryKeyDays: number;
  readonly unsentDraftDays: number;
  readonly sentPayloadDays: number;
  /** Comments, reasons and what was said of a class. */
  readonly commentDays: number;
  /** A plan is kept without the person from then on. */
  readonly planDays: number;
};

/** Settings that name people, and can name a user group beside them. */
export const groupRoles = ['headCoaches', 'admins', 'trustedInstructors'] as const;
export type GroupRole = (typeof groupRoles)[number];

export type Settings = {
  readonly zone: string;
  /** Places the workspace knows by id. */
  readonly reviewChannel?: string;
  readonly teamChannel?: string;
  readonly headCoaches: readonly string[];
  /** Those who may change settings beside the head coaches. */
  readonly admins?: readonly string[];
  readonly soleCoachMayApproveOwn: boolean;
  /** By id, the user group of the workspace whose people have a role beside those named for it. */
  readonly roleGroups?: Readonly<Partial<Record<GroupRole, string>>>;
  /** Their own plans in which nothing is found are approved once they are sent. */
  readonly trustedInstructors?: readonly string[];
  /** An easier option named, up to 10 s more or less, fewer rounds: the approval stays, a coach is told. */
  readonly smallEditsKeepApproval?: boolean;
  readonly rooms: readonly Room[];
  readonly sharedKit?: readonly SharedKit[];
  readonly slots: readonly WeeklySlot[];
  readonly slotHabits: readonly SlotHabit[];
  readonly defaultSlotSeconds: number;
  readonly countInSeconds: number;
  /** How early the next move and its kit are called. */
  readonly nextCueSeconds: number;
  readonly countdownMinutes: readonly number[];
  /** A post of its own at each moment of the countdown, beside the one message that is updated. */
  readonly countdownPosts: boolean;
  /** When the team is told of the next day's classes, the evening before; `off` for never. */
  readonly digestTime: string;
  /** Where the app is reached from outside, for the address of the calendar feed. */
  readonly publicUrl?: string;
  readonly reportAt: { readonly weekday: Weekday; readonly time: string };
  readonly transitions: TransitionSettings;
  /** Present once feedback has moved the factor. */
  readonly factorMove?: FactorMove;
  readonly floors: FloorSettings;
  readonly checks: CheckSettings;
  readonly dose: DoseSettings;
  readonly firstPriority: readonly Muscle[];
  readonly mainLifts: 'keep' | 'vary';
  readonly energyOn: boolean;
  readonly retention: RetentionSettings;
  readonly ownMoves: readonly Move[];
  /** A studio's nicknames: what people type → a move's id. */
  readonly ownNames: Readonly<Record<string, string>>;
};

/** The values in force until a studio sets its own; where each comes from stands in `default-sources.ts`. */
export const defaultSettings: Settings = {
  zone: 'UTC',
  headCoaches: [],
  soleCoachMayApproveOwn: false,
  rooms: [],
  slots: [],
  slotHabits: [],
  defaultSlotSeconds: 2700,
  countInSeconds: 0,
  nextCueSeconds: 10,
  countdownMinutes: [60, 15, 5],
  countdownPosts: false,
  digestTime: '18:00',
  reportAt: { weekday: 'Mon', time: '07:00' },
  transitions: {
    putDownSeconds: 2,
    pickUpSeconds: 3,
    swapSeconds: 5,
    standKneelSeconds: 3,
    standFloorSeconds: 5,
    floorTurnSeconds: 2,
    sideSeconds: 3,
    firstRoundExtraSeconds: 2,
    factor: 1,
  },
  floors: {
    leastWarmUpSeconds: 300,
    leastCoolDownSeconds: 300,
    leastRestSeconds: 10,
  },
  checks: {
    lateStartShareOfBout: 1 / 3,
    lateStartSecondsOfBout: 10,
    unusedShareOfTeachingTime: 0.1,
    longCoolDownSeconds: 600,
    jumpsFreeSeconds: 240,
    gripBoutSeconds: 40,
    allOutBeginnersSeconds: 720,
    loadedNonStopBeginnersSeconds: 300,
    squareMetresAPerson: 4.2,
    squareMetresAPersonMoving: 6,
    floorChangesAMinute: { 1: 1.25, 2: 2, 3: 3 },
    newMoves: 3,
    explainNewMoveSeconds: 10,
    heavyCompoundRestSeconds: 120,
    supineLongSeconds: 300,
    rowBreakSeconds: 45,
    rowBoutSeconds: 20,
    floorTurnsAMinute: 1,
    floorChangesLeast: 4,
    breakBetweenBlocksSeconds: 60,
    pushPullRatio: 2,
    pushPullSets: 6,
    recoverySets: 6,
    longClassSeconds: 3600,
    heavyRpe: 8,
    knownMovesLeast: 40,
    wipeSeconds: 15,
  },
  dose: { low: 4, high: 10, veryHigh: 20 },
  firstPriority: [
    'quadriceps',
    'hamstrings',
    'glutes',
    'chest',
    'upper back',
    'lats',
    'shoulders',
    'abdominals',
    'obliques',
    'lower back',
  ],
  mainLifts: 'keep',
  energyOn: false,
  retention: {
    deliveryKeyDays: 7,
    unsentDraftDays: 90,
    sentPayloadDays: 30,
    commentDays: 365,
    planDays: 730,
  },
  ownMoves: [],
  ownNames: {},
};
