import type { DefaultSource } from '../../../domain/default-sources.ts';
import type {
  CheckSettings,
  DoseSettings,
  FloorSettings,
  GroupRole,
  RetentionSettings,
  Settings,
  TransitionSettings,
} from '../../../domain/settings.ts';
import type { SettingsPart } from '../../flows/settings-part.ts';
import { privateWords } from './private-words.ts';

const transitions: Readonly<Record<keyof TransitionSettings, string>> = {
  putDownSeconds: 'Put kit down, seconds',
  pickUpSeconds: 'Pick kit up, seconds',
  swapSeconds: 'Swap kit, seconds',
  standKneelSeconds: 'Standing to kneeling or back, seconds',
  standFloorSeconds: 'Standing to the floor or back, seconds',
  floorTurnSeconds: 'Turn on the floor, seconds',
  sideSeconds: 'Change side, seconds',
  firstRoundExtraSeconds: 'More in a first round, seconds',
  factor: 'This studio’s factor on all of these',
};

const floors: Readonly<Record<keyof FloorSettings, string>> = {
  leastWarmUpSeconds: 'Least warm-up, seconds',
  leastCoolDownSeconds: 'Least cool-down, seconds',
  leastRestSeconds: 'Least rest, seconds',
};

const checks: Readonly<Record<keyof CheckSettings, string>> = {
  lateStartShareOfBout: 'Late start told above this share of a bout',
  lateStartSecondsOfBout: 'Late start told above, seconds of a bout',
  unusedShareOfTeachingTime: 'Unused time told above this share',
  longCoolDownSeconds: 'Cool-down beyond this counts as unused, seconds',
  jumpsFreeSeconds: 'No jumps in the first, seconds of work',
  gripBoutSeconds: 'Grip counts in bouts from, seconds',
  allOutBeginnersSeconds: 'All-out blocks for beginners up to, seconds',
  loadedNonStopBeginnersSeconds: 'Loaded work without a break for beginners up to, seconds',
  squareMetresAPerson: 'Floor a person, square metres',
  squareMetresAPersonMoving: 'Floor a person for swings and carries, square metres',
  floorChangesAMinute: 'Ups and downs a minute, level',
  newMoves: 'New moves in a class up to',
  explainNewMoveSeconds: 'Explaining a new move, seconds',
  heavyCompoundRestSeconds: 'Rest for heavy compound work, seconds',
  supineLongSeconds: 'On the back at a stretch up to, seconds',
  rowBreakSeconds: 'A gap that ends a row of moves, seconds',
  rowBoutSeconds: 'Bouts that count to a row from, seconds',
  floorTurnsAMinute: 'Front to back turns a minute up to',
  floorChangesLeast: 'Ups and downs never told below',
  breakBetweenBlocksSeconds: 'Break between blocks, seconds',
  pushPullRatio: 'Push and pull told above this ratio',
  pushPullSets: 'and from so many sets apart',
  recoverySets: '48 hours told from so many sets',
  longClassSeconds: 'A class is long from, seconds',
  heavyRpe: 'A move counts as heavy from this rating, 0–10',
  knownMovesLeast: 'New moves told once so many are known',
  wipeSeconds: 'Wiping shared kit, seconds',
};

const dose: Readonly<Record<keyof DoseSettings, string>> = {
  low: 'Low below, sets a week',
  high: 'High from, sets a week',
  veryHigh: 'Very high above, sets a week',
};

const retention: Readonly<Record<keyof RetentionSettings, string>> = {
  deliveryKeyDays: 'Marks of what came in, so that nothing counts twice, days',
  unsentDraftDays: 'Drafts never sent, days',
  sentPayloadDays: 'Text of messages sent, days',
  commentDays: 'Comments and what was said of a class, days',
  planDays: 'Plans with their person, days',
};

const names: Readonly<Record<keyof Settings, string>> = {
  zone: 'time zone',
  reviewChannel: 'review channel',
  teamChannel: 'team channel',
  headCoaches: 'head coaches',
  admins: 'admins',
  soleCoachMayApproveOwn: 'a coach’s own plan',
  trustedInstructors: 'trusted instructors',
  roleGroups: 'user groups with a role',
  smallEditsKeepApproval: 'small edits keep an approval',
  rooms: 'rooms',
  sharedKit: 'shared kit',
  slots: 'weekly slots',
  slotHabits: 'slot habits',
  defaultSlotSeconds: 'length of a class that says none',
  countInSeconds: 'count-in',
  nextCueSeconds: 'cue of what comes next',
  countdownMinutes: 'countdown',
  countdownPosts: 'posts of the countdown',
  digestTime: 'evening digest',
  publicUrl: 'address of this app',
  reportAt: 'time of the week’s report',
  transitions: 'change-overs',
  factorMove: 'the last step of their factor',
  floors: 'floors',
  checks: 'limits of the checks',
  dose: 'doses',
  firstPriority: 'muscles of first priority',
  mainLifts: 'main lifts',
  energyOn: 'energy',
  retention: 'how long things are kept',
  ownMoves: 'our own moves',
  ownNames: 'nicknames',
};

/** The settings forms: labels, what each changes, and what is wrong. */
export const settingsWords = {
  title: 'Settings',
  save: 'Save',
  back: 'All settings',
  part: partText,
  about: aboutText,
  saved: (changed: readonly string[]) =>
    changed.length === 0 ? 'Nothing was different.' : `Saved: ${changed.join(', ')}. In force from now on.`,
  onlyCoaches: 'Settings are for head coaches and admins. Nothing was changed.',
  names,
  gone: 'That was changed by someone else in the meantime. Open it again.',
  transitions,
  floors,
  checks,
  dose,
  retention,
  level: (label: string, level: number) => `${label} ${level}`,
  source: sourceText,
  standard: (value: number, source: DefaultSource) => `Until set: ${value}. ${sourceText(source)}`,
  zone: 'Time zone',
  zoneHint: 'Such as Europe/Lisbon. Classes, countdowns and reports go by it.',
  zoneWrong: 'No such time zone. Write it as in Europe/Lisbon.',
  teamChannel: 'Team channel',
  teamChannelHint: 'Countdowns and the week’s report are posted there for all. Invite Evenset first.',
  reviewChannel: 'Review channel',
  reviewChannelHint: 'Plans sent for review are posted there. Invite Evenset first.',
  sameChannel: 'Take another channel than for the team: plans in review are not for all.',
  countdown: 'Countdown, minutes before a class',
  countdownHint: 'One message a class: posted at the first, updated at the others. Such as 60, 15, 5.',
  countdownWrong: 'Write one to five whole minutes from 1 to 1440, such as 60, 15, 5.',
  reportDay: 'Week’s report: day',
  reportTime: 'Week’s report: time',
  digest: 'Evening digest of tomorrow’s classes',
  digestHint: 'Leave empty for none.',
  slotMinutes: 'Length of a class that says none, minutes',
  countIn: 'Count-in before a block’s first bout, seconds',
  countInHint: 'Taken from the rest there; time of its own where there is none.',
  slotMinutesHint: 'Plans are fitted to it until a day and a slot are known.',
  nextCue: 'Next move called ahead, seconds',
  nextCueHint: 'How early the timeline calls the next move and its kit.',
  countdownPosts: 'Countdown in the team channel',
  countdownPostsHint: 'A post a moment is louder: everyone is notified each time.',
  onePost: 'one message a class, updated',
  eachPost: 'a post at each moment',
  publicUrl: 'Address this app is reached at',
  publicUrlHint: 'Such as https://evenset.example. Makes the address of the calendar whole.',
  publicUrlWrong: 'Write the whole address, such as https://evenset.example.',
  reportHint: 'Once a week, on the week before.',
  numberWrong: 'Write a number, such as 30.',
  wholeNumberWrong: 'Write a whole number.',
  atLeast: (least: number) => `At least ${least}.`,
  headCoaches: 'Head coaches',
  headCoachesHint: 'They approve plans and change settings. A role taken away counts at the next click.',
  admins: 'Admins',
  adminsHint: 'They change settings and approve nothing.',
  lockedOut:
    'Name at least one head coach or admin by name, so that someone can change settings whatever becomes of a user group.',
  roleGroup: (role: GroupRole) => `${roleText(role)}: a user group beside them`,
  roleGroupHint: 'Whoever is in the group has the role, and loses it with the group.',
  noGroup: 'no user group',
  groupChoice: (handle: string, people: number) =>
    `@${handle}, ${people === 1 ? '1 person' : `${people} people`}`,
  groupNotListed: (id: string) => `${id}, not among the groups any more`,
  noGroups: 'This workspace has no user groups yet. Name people instead.',
  groupsNotRead: groupsNotReadText,
  groupsGone: (roles: readonly GroupRole[]) =>
    `The user group for ${roles.map((role) => roleText(role).toLowerCase()).join(' and ')} is not there any more, so it gives no role. Choose another under Settings, Roles, or name people.`,
  trusted: 'Trusted instructors',
  trustedHint: 'Their own plans in which nothing is found are approved once sent; the coaches are told.',
  smallEdits: 'Small edits of an approved plan',
  smallEditsHint: 'An easier option named, up to 10 s more or less, fewer rounds. The coaches are told.',
  smallEditsReview: 'go back to review',
  smallEditsKeep: 'keep the approval',
  ownPlan: 'A coach’s own plan',
  ownPlanHint: 'Counts only while the studio has one head coach.',
  ownPlanNo: 'another coach approves it',
  ownPlanYes: 'the only coach may approve it',
  addRoom: 'Add a room',
  addSlot: 'Add a slot',
  change: 'Change',
  name: 'Name',
  nameHint: `As people write it in a class or say it. ${privateWords.hint}`,
  upTo: (people: number) => `up to ${people} people`,
  nameTaken: 'There is one of that name already.',
  kit: 'Kit, a line each, in single pieces',
  kitHint: 'Such as dumbbell 32: a pair is two. Checked against the head count.',
  kitWrong: (line: string, items: string) => `“${line}” is not read. Write an item and a number: ${items}.`,
  capacity: 'Capacity as posted',
  capacityHint: 'By your local fire code. A class over it must be put right.',
  area: 'Floor, square metres',
  areaHint: 'A class with less floor a person than the limits of the checks say is told.',
  door: 'Door time, seconds',
  clearUp: 'Clear-up time, seconds',
  doorHint: 'Taken off the slot: the plan must fit what is left.',
  emergency: 'Emergency card, in your words',
  emergencyHint:
    'Shown with the countdown: who is called, where first aid is. No names or health details of members.',
  remove: 'Keep or remove',
  keepIt: 'keep',
  removeIt: 'remove',
  weekday: 'Day',
  time: 'Start',
  minutes: 'Length, minutes',
  minutesHint: 'Less door and clear-up time it is what a plan must fit.',
  room: 'Room',
  roomHint: 'Its kit, capacity and door time count for these classes.',
  instructor: 'Instructor',
  instructorHint: 'Gets the countdown’s first lines, and is asked how it went.',
  people: 'People expected',
  peopleHint: 'Kit and floor are checked for them until a class says otherwise.',
  missing: 'Fill this in.',
  habits: 'Slot habits, a line each',
  habitsHint: 'Name: slot, slot. A set of slots one member might come to; never a person.',
  habitWrong: (line: string) => `“${line}” is not read. Write: Early birds: Early Circuit, Saturday Long`,
  slotUnknown: (name: string, slots: string) => `“${name}” is no slot. There are: ${slots}.`,
  shared: 'Kit that rooms share, a line each',
  sharedHint: 'Such as kettlebell 16: Mill Room, Loft. Told where two classes need it at once.',
  roomUnknown: (name: string, rooms: string) => `“${name}” is no room. There are: ${rooms}.`,
  sharedWrong: (line: string) => `“${line}” is not read. Write: kettlebell 16: Mill Room, Loft`,
  dosesOutOfOrder: 'Low, high and very high grow from one to the next.',
  shareWrong: 'A share lies between 0 and 1, such as 0.1.',
  firstPriority: 'Muscles of first priority',
  firstPriorityHint: 'The report tells these when they get little.',
  firstPriorityNone: 'Choose at least one.',
  mainLifts: 'Main lifts from week to week',
  mainLiftsHint: 'A class that goes the other way is told, as good to know.',
  keep: 'keep them',
  vary: 'vary them',
  energy: 'Energy, an estimate',
  energyHint:
    'On the card and under Muscles only, for 55–95 kg and adults under 60; never in the team channel.',
  on: 'on',
  off: 'off',
  ownMovesNone: 'None yet.',
  addMove: 'Add a move',
  nicknames: 'Nicknames',
  nicknamesHow: 'By message: nickname press = push-up, or drop nickname press.',
  list: (items: readonly string[]) => (items.length === 0 ? 'none' : items.join(', ')),
  notes: [
    '*Hearing.* Loud music hurts, teachers first. Limits at work: NIOSH 85 dB(A) over 8 h, halved for every 3 dB more (88: 4 h, 91: 2 h, 94: 1 h); OSHA 90 over 8 h (29 CFR 1910.95); EU action at 80 and 85, limit 87 (2003/10/EC). High-intensity classes were measured at 93.1 dB(A) on average (Beach EF, Nie V 2014), which fills the NIOSH day in 74 min. Measure in your room, and follow your local rules.',
    '*Supervision.* No ratio of people to instructor is published for adult group strength, so there is no default; staffing and supervision are in EN 17229-2:2023 and your local rules. The posted capacity by your fire code comes first, then about 4.2 m² a person (45 sq ft, trade body page, 2010).',
    '*Emergency.* A written, practised plan, leaders trained in CPR and an AED programme are asked for beside the law (AHA/ACSM statement; ACSM Facility Standards, 5th ed.). Local law decides. Every room carries its card in your words.',
    '*Under 18.* The product assumes adults; classes with younger people follow your youth policy and the law.',
  ],
} as const;

function roleText(role: GroupRole): string {
  switch (role) {
    case 'headCoaches':
      return 'Head coaches';
    case 'admins':
      return 'Admins';
    case 'trustedInstructors':
      return 'Trusted instructors';
  }
}

/** `code` is the platform's word for why. */
function groupsNotReadText(code: string): string {
  switch (code) {
    case 'missing_scope':
      return 'Evenset may not see user groups here, so they give no role. Whoever manages apps adds the scope usergroups:read and installs Evenset again; until then name people.';
    case 'plan_upgrade_required':
    case 'paid_teams_only':
      return 'This workspace’s plan has no user groups, so they give no role. Name people.';
    default:
      return `The user groups could not be read just now (${code}). What is set stays; open this again in a while, or name people.`;
  }
}

function partText(part: SettingsPart): string {
  switch (part) {
    case 'studio':
      return 'Zone, channels, times';
    case 'roles':
      return 'Roles';
    case 'rooms':
      return 'Rooms and kit';
    case 'shared kit':
      return 'Shared kit';
    case 'slots':
      return 'Weekly slots';
    case 'habits':
      return 'Slot habits';
    case 'times':
      return 'Change-overs and floors';
    case 'checks':
      return 'Limits of the checks';
    case 'dose':
      return 'Doses, priorities, energy';
    case 'own moves':
      return 'Our own moves';
    case 'retention':
      return 'How long things are kept';
    case 'help':
      return 'Hearing and supervision';
  }
}

/** What a part changes. */
function aboutText(part: SettingsPart): string {
  switch (part) {
    case 'studio':
      return 'When and where Evenset posts.';
    case 'roles':
      return 'Who approves plans, who sets things, and what needs no coach.';
    case 'rooms':
      return 'What kit, capacity and teaching time each class is checked against.';
    case 'shared kit':
      return 'Trolleys that several rooms use.';
    case 'slots':
      return 'The timetable: a class each week for each slot.';
    case 'habits':
      return 'For whom the week’s report looks at gaps.';
    case 'times':
      return 'Seconds between moves, and what no fit may cut below. Plans are timed with these at once.';
    case 'checks':
      return 'From where a check speaks up.';
    case 'dose':
      return 'What the week’s report calls low or high, for which muscles.';
    case 'own moves':
      return 'Moves and nicknames that only we use.';
    case 'retention':
      return 'After how many days things go, each night.';
    case 'help':
      return 'What is published, for your own rules.';
  }
}

function sourceText(source: DefaultSource): string {
  switch (source.kind) {
    case 'published':
      return source.source;
    case 'common practice':
      return source.note === undefined
        ? 'Common practice, no published source.'
        : `Common practice; ${source.note}.`;
    case 'ours':
      return `Ours: ${source.note}.`;
    case 'set by the studio':
      return 'Each studio says it itself.';
  }
}
