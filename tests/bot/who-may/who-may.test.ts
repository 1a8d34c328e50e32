import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { printButtonValue } from '../../../bot/blocks/button-value.ts';
import { printSettingsPlace } from '../../../bot/blocks/settings-place.ts';
import { handlers } from '../../../bot/handlers.ts';
import { actions, commands, shortcuts, views } from '../../../bot/ids.ts';
import { english } from '../../../bot/words/en.ts';
import { houseClassNames } from '../../../domain/plan/house-classes.ts';
import type { Stores } from '../../../domain/ports.ts';
import type { Settings } from '../../../domain/settings.ts';
import {
  askedSaying,
  canary,
  type Gesture,
  type Outcome,
  openStudioOfRoles,
  otherStudio,
  ownStudio,
  people,
  type Role,
  reviewChannel,
  roles,
  type StudioOfRoles,
  toldWeek,
  type World,
} from './studio-of-roles.ts';

const everyone = roles;
const { refusal, flow, coach, classes, week, settings, data, ownMove } = english;
const notYours = refusal({ code: 'not-your-plan', facts: { authorId: people.owner } });
const notCoach = refusal({ code: 'not-a-head-coach', facts: {} });

type Row = {
  readonly gesture: (world: World) => Gesture;
  /** Who may; all others are told `no`. */
  readonly by: readonly Role[];
  /** What comes of it for who may: something is changed, or shown and nothing changed. */
  readonly does: 'changes' | 'shows';
  readonly no?: string;
  /** What is about a person, or makes something new, is done in the studio it is asked in. */
  readonly anywhere?: true;
  /** What its button or form carries is not read. */
  readonly valueless?: true;
  /** Right as well, for the same from elsewhere. */
  readonly alsoRight?: string;
};

const press = (actionId: string, value: string): Gesture => ({
  kind: 'action',
  actionId,
  value,
  message: { place: 'C0TEAM', stamp: '1.1' },
});
const onPlan = (actionId: string, plan: string, more: Readonly<Record<string, unknown>> = {}): Gesture =>
  press(actionId, JSON.stringify({ plan, version: 1, ...more }));
const inView = (actionId: string, value: string): Gesture => ({
  kind: 'action',
  actionId,
  value,
  view: { id: 'V1', metadata: '', values: {} },
});
const startOf = (classId: string) => `${classId.slice(-10)}T18:00:00.000Z`;
const onClass = (actionId: string, classId: string, choice?: string): Gesture =>
  press(actionId, JSON.stringify([classId, startOf(classId), ...(choice === undefined ? [] : [choice])]));
const submit = (
  callbackId: string,
  metadata: string,
  values: Readonly<Record<string, string | readonly string[]>>,
): Gesture => ({ kind: 'view', callbackId, metadata, values });

const theirs = { by: ['coach', 'owner'], no: notYours } as const;
const reviewers = { by: ['coach'], no: notCoach } as const;
const readers = { by: everyone, does: 'shows' } as const;
const setters = { by: ['admin', 'coach'], no: settings.onlyCoaches } as const;
const markers = { by: ['coach', 'owner'], no: flow.onlyInstructorMarks } as const;
const runners = { by: ['coach', 'owner'], no: classes.onlyInstructor } as const;

/** Every button and choice, by its name in `actions`. */
const clicks: Readonly<Record<keyof typeof actions, Row>> = {
  applyEdit: {
    gesture: (w) => onPlan(actions.applyEdit, w.draft, { edit: 'rounds A x2' }),
    does: 'changes',
    ...theirs,
  },
  chooseMove: {
    gesture: (w) => onPlan(actions.chooseMove, w.wrong, { at: w.problem, name: 'squat jump' }),
    does: 'changes',
    ...theirs,
  },
  undo: {
    gesture: (w) => press(actions.undo, printButtonValue({ plan: w.edited, version: 2 })),
    does: 'changes',
    ...theirs,
  },
  redo: {
    gesture: (w) => press(actions.redo, printButtonValue({ plan: w.undone, version: 3 })),
    does: 'changes',
    ...theirs,
  },
  tryExample: {
    gesture: () => press(actions.tryExample, 'example'),
    by: everyone,
    does: 'changes',
    anywhere: true,
    valueless: true,
  },
  timeline: { gesture: (w) => onPlan(actions.timeline, w.waits), ...readers },
  allFindings: { gesture: (w) => onPlan(actions.allFindings, w.waits), ...readers },
  muscles: { gesture: (w) => onPlan(actions.muscles, w.waits), ...readers },
  options: { gesture: (w) => onPlan(actions.options, w.waits), ...readers },
  openSchedule: { gesture: (w) => onPlan(actions.openSchedule, w.draft), does: 'shows', ...theirs },
  sendForReview: { gesture: (w) => onPlan(actions.sendForReview, w.draft), does: 'changes', ...theirs },
  withdraw: { gesture: (w) => onPlan(actions.withdraw, w.waits), does: 'changes', ...theirs },
  approve: { gesture: (w) => onPlan(actions.approve, w.waits), does: 'changes', ...reviewers },
  openAskChanges: { gesture: (w) => onPlan(actions.openAskChanges, w.waits), does: 'shows', ...reviewers },
  openApproveWithNote: {
    gesture: (w) => onPlan(actions.openApproveWithNote, w.waits),
    does: 'shows',
    ...reviewers,
  },
  openComment: { gesture: (w) => onPlan(actions.openComment, w.waits), does: 'shows', ...reviewers },
  resolveComment: {
    gesture: (w) => onPlan(actions.resolveComment, w.waits, { comment: w.comment }),
    by: ['coach', 'owner'],
    does: 'changes',
    no: coach.onlyTheirs,
  },
  openDismiss: {
    gesture: (w) => onPlan(actions.openDismiss, w.late, { name: w.finding }),
    does: 'shows',
    ...theirs,
  },
  approveClean: {
    gesture: (w) => press(actions.approveClean, JSON.stringify([[w.clean, 2]])),
    by: ['coach'],
    does: 'changes',
    no: coach.onlyCoaches,
  },
  taughtAsPlanned: { gesture: (w) => press(actions.taughtAsPlanned, w.past), does: 'changes', ...markers },
  openTaughtWithChanges: {
    gesture: (w) => press(actions.openTaughtWithChanges, w.past),
    does: 'shows',
    ...markers,
  },
  notTaught: { gesture: (w) => press(actions.notTaught, w.past), does: 'changes', ...markers },
  effort: { gesture: (w) => press(actions.effort, `${w.past}|7`), does: 'changes', ...markers },
  length: { gesture: (w) => press(actions.length, `${w.past}|over`), does: 'changes', ...markers },
  imIn: {
    gesture: (w) => onClass(actions.imIn, w.upcoming),
    by: ['owner'],
    does: 'changes',
    no: classes.notThisClass,
  },
  cannotTeach: { gesture: (w) => onClass(actions.cannotTeach, w.upcoming), does: 'changes', ...runners },
  takeBackOffer: { gesture: (w) => onClass(actions.takeBackOffer, w.offered), does: 'changes', ...runners },
  takeClass: { gesture: (w) => onClass(actions.takeClass, w.offered), by: everyone, does: 'changes' },
  takePlace: {
    gesture: (w) => onClass(actions.takePlace, w.planned, `${w.draft} ${w.edited}`),
    does: 'changes',
    ...theirs,
  },
  chooseClass: {
    gesture: (w) => onClass(actions.chooseClass, w.upcoming, 'cancel Mon'),
    does: 'changes',
    ...runners,
  },
  openChangeClass: {
    gesture: (w) => onClass(actions.openChangeClass, w.upcoming),
    does: 'shows',
    ...runners,
  },
  chooseOtherClass: {
    gesture: (w) => press(actions.chooseOtherClass, w.upcoming),
    does: 'shows',
    ...runners,
  },
  houseClass: {
    gesture: (w) => onClass(actions.houseClass, w.upcoming, houseClassNames[0]),
    by: ['owner'],
    does: 'changes',
    no: flow.buttonGone,
  },
  applyWeekEdit: {
    gesture: (w) => onPlan(actions.applyWeekEdit, w.draft, { edit: 'rounds A x2', on: `week:${toldWeek}` }),
    does: 'changes',
    ...theirs,
  },
  goOnSaying: {
    gesture: () => press(actions.goOnSaying, `${toldWeek}|${askedSaying}`),
    by: ['coach'],
    does: 'changes',
    no: week.onlyCoachDecides,
  },
  stopSaying: {
    gesture: () => press(actions.stopSaying, `${toldWeek}|${askedSaying}`),
    by: ['coach'],
    does: 'changes',
    no: week.onlyCoachDecides,
  },
  openOwnMove: {
    gesture: (w) => onPlan(actions.openOwnMove, w.wrong, { at: w.problem, name: 'qwertz jump' }),
    ...readers,
  },
  startAgain: {
    gesture: (w) => onPlan(actions.startAgain, w.draft),
    by: ['owner'],
    does: 'changes',
    no: flow.buttonGone,
  },
  openDraft: {
    gesture: () => inView(actions.openDraft, 'home'),
    ...readers,
    anywhere: true,
    valueless: true,
  },
  openSettings: {
    gesture: () => press(actions.openSettings, 'home'),
    does: 'shows',
    anywhere: true,
    valueless: true,
    ...setters,
  },
  settingsPart: {
    gesture: () => inView(actions.settingsPart, printSettingsPlace({ part: 'roles' })),
    does: 'shows',
    anywhere: true,
    ...setters,
  },
  showMyData: {
    gesture: () => press(actions.showMyData, 'home'),
    anywhere: true,
    valueless: true,
    ...readers,
  },
  forgetMe: {
    gesture: () => press(actions.forgetMe, 'me'),
    by: everyone,
    does: 'changes',
    anywhere: true,
  },
  openNotices: {
    gesture: () => press(actions.openNotices, 'home'),
    anywhere: true,
    valueless: true,
    ...readers,
  },
};

const onForm = (callbackId: string, plan: string, values: Readonly<Record<string, string>>, name?: string) =>
  submit(callbackId, printButtonValue({ plan, version: 1, ...(name === undefined ? {} : { name }) }), values);

/** Every form, by its name in `views`. */
const forms: Readonly<Record<keyof typeof views, Row>> = {
  draft: {
    gesture: () => submit(views.draft, '', { class: 'Row, 20 min\nwarm-up 5:00\ncircuit x3, 40/20\nplank' }),
    by: everyone,
    does: 'changes',
    anywhere: true,
    valueless: true,
  },
  schedule: {
    gesture: (w) => onForm(views.schedule, w.draft, { date: '2026-11-12', time: '18:00', room: 'Hall' }),
    does: 'changes',
    ...theirs,
  },
  askChanges: {
    gesture: (w) => onForm(views.askChanges, w.waits, { reason: 'longer rest' }),
    does: 'changes',
    ...reviewers,
  },
  approveWithNote: {
    gesture: (w) => onForm(views.approveWithNote, w.waits, { note: 'fine' }),
    does: 'changes',
    ...reviewers,
  },
  comment: {
    gesture: (w) => onForm(views.comment, w.waits, { line: w.line, comment: 'slower' }),
    does: 'changes',
    ...reviewers,
  },
  dismiss: {
    gesture: (w) => onForm(views.dismiss, w.late, { reason: 'wanted' }, w.finding),
    does: 'changes',
    ...theirs,
  },
  taughtWithChanges: {
    gesture: (w) => submit(views.taughtWithChanges, w.past, { changes: 'two rounds fewer' }),
    does: 'changes',
    ...markers,
  },
  changeClass: {
    gesture: (w) =>
      submit(views.changeClass, JSON.stringify([w.upcoming, startOf(w.upcoming)]), { what: 'cancel' }),
    does: 'shows',
    ...runners,
  },
  confirmChange: {
    gesture: (w) =>
      submit(
        views.confirmChange,
        JSON.stringify({ classId: w.upcoming, startsAt: startOf(w.upcoming), change: { kind: 'cancel' } }),
        {},
      ),
    does: 'changes',
    ...runners,
  },
  ownMove: {
    gesture: (w) =>
      submit(
        views.ownMove,
        printButtonValue({ plan: w.wrong, version: 1, at: [...w.problem], name: 'qwertz jump' }),
        { name: 'qwertz jump', like: 'squat-jump' },
      ),
    by: everyone,
    does: 'changes',
    // From the settings, where no draft waits for it.
    alsoRight: '',
  },
  changeOwnMove: {
    gesture: (w) => submit(views.changeOwnMove, w.ownMove, { standing: 'retired' }),
    by: ['admin', 'coach'],
    does: 'changes',
    no: ownMove.onlyCoaches,
  },
  settings: {
    gesture: () =>
      submit(views.settings, printSettingsPlace({ part: 'dose' }), {
        'dose.low': '5',
        firstPriority: ['quadriceps'],
      }),
    does: 'changes',
    anywhere: true,
    ...setters,
  },
  notices: {
    gesture: () => submit(views.notices, '', { notices: [] }),
    by: everyone,
    does: 'changes',
    anywhere: true,
    valueless: true,
  },
};

const said = (text: string): ((world: World) => Gesture) => {
  return () => ({ kind: 'command', text });
};
const underReview = (text: string): ((world: World) => Gesture) => {
  return (w) => ({ kind: 'message', text, place: reviewChannel, thread: w.reviewThread });
};
const underDraft = (text: string): ((world: World) => Gesture) => {
  return (w) => ({ kind: 'message', text, place: `D${people.owner.slice(1)}`, thread: w.draftThread });
};

/** Words of the command, of direct messages and of threads, the shortcut, and home. */
const words: Readonly<Record<string, Row>> = {
  '/evenset': { gesture: said(''), anywhere: true, ...readers },
  '/evenset a class': {
    gesture: said('Row, 20 min\nwarm-up 5:00\ncircuit x3, 40/20\nplank'),
    by: everyone,
    does: 'changes',
    anywhere: true,
  },
  week: { gesture: said('week'), anywhere: true, ...readers },
  reviews: { gesture: said('reviews'), by: ['coach'], does: 'shows', no: coach.onlyCoaches, anywhere: true },
  help: { gesture: said('help'), anywhere: true, ...readers },
  'my data': { gesture: said('my data'), anywhere: true, ...readers },
  'forget me': { gesture: said('forget me'), anywhere: true, ...readers },
  'forget someone': {
    gesture: said(`forget <@${people.owner}>`),
    // The owner asks for themselves.
    by: ['admin', 'coach', 'owner'],
    does: 'changes',
    no: data.onlyCoachForgets,
    anywhere: true,
  },
  'new move': {
    gesture: said('new move yard crawl like bear crawl'),
    by: everyone,
    does: 'changes',
    anywhere: true,
  },
  'retire move': {
    gesture: said('retire move canary crawl'),
    by: ['admin', 'coach'],
    does: 'changes',
    no: ownMove.onlyCoaches,
  },
  nickname: {
    gesture: said('nickname yard squat = goblet squat'),
    by: ['admin', 'coach'],
    does: 'changes',
    no: ownMove.onlyCoaches,
    anywhere: true,
  },
  'can’t teach': {
    gesture: said("can't teach 2026-11-09"),
    by: ['coach', 'owner'],
    does: 'shows',
    no: classes.noSuchClass("can't teach 2026-11-09"),
  },
  cancel: {
    gesture: said('cancel 2026-11-09'),
    by: ['coach', 'owner'],
    does: 'changes',
    no: classes.noSuchClass('cancel 2026-11-09'),
  },
  move: {
    gesture: said('move 2026-11-09 to 2026-11-10 19:00'),
    by: ['coach', 'owner'],
    does: 'changes',
    no: classes.noSuchClass('move 2026-11-09 to 2026-11-10 19:00'),
  },
  give: {
    gesture: said(`give 2026-11-09 to <@${people.other}>`),
    by: ['coach', 'owner'],
    does: 'changes',
    no: classes.noSuchClass(`give 2026-11-09 to &lt;@${people.other}&gt;`),
  },
  holiday: {
    gesture: said('holiday 2026-11-09 to 2026-11-13'),
    by: ['coach'],
    does: 'changes',
    no: classes.onlyCoach,
  },
  calendar: { gesture: said('calendar'), by: everyone, does: 'changes', anywhere: true },
  'calendar new': {
    gesture: said('calendar new'),
    by: ['coach'],
    does: 'changes',
    no: classes.onlyCoach,
    anywhere: true,
  },
  'an edit in the thread': {
    gesture: underDraft('rounds A x2'),
    by: ['coach', 'owner'],
    does: 'changes',
    no: notYours,
  },
  'a line put right in the thread': {
    gesture: underDraft('line 4: squat jump'),
    by: ['coach', 'owner'],
    does: 'changes',
    no: notYours,
  },
  'send in the thread': { gesture: underDraft('send'), does: 'changes', ...theirs },
  'timeline in the thread': { gesture: underDraft('timeline'), ...readers },
  'versions in the thread': { gesture: underDraft('versions'), ...readers },
  'approve under the review': { gesture: underReview('approve'), does: 'changes', ...reviewers },
  'changes under the review': {
    gesture: underReview('changes: longer rest'),
    does: 'changes',
    ...reviewers,
  },
  'a comment under the review': { gesture: underReview('A: slower'), does: 'changes', ...reviewers },
  'withdraw under the review': { gesture: underReview('withdraw'), does: 'changes', ...theirs },
  'an edit under the review': { gesture: underReview('rounds A x2'), does: 'changes', ...theirs },
  'the message shortcut': {
    gesture: () => ({ kind: 'shortcut', callbackId: shortcuts.draftFromMessage }),
    anywhere: true,
    ...readers,
  },
};

const rows: readonly (readonly [name: string, row: Row])[] = [
  ...Object.entries(clicks),
  ...Object.entries(forms).map(([name, row]) => [`${name} form`, row] as const),
  ...Object.entries(words),
];

function verdictOf({ changed, told, shown, wire }: Outcome, no: string | undefined) {
  if (changed[ownStudio].length > 0) return 'changes';
  if (no !== undefined && wire.includes(JSON.stringify(no).slice(1, -1))) return 'no';
  return shown || told.length > 0 ? 'shows' : 'silence';
}

let studio: StudioOfRoles;
beforeAll(async () => {
  studio = await openStudioOfRoles();
});
afterAll(() => studio.close());

test('every action, form, command and shortcut has its row, and a handler', () => {
  expect(Object.keys(clicks).toSorted()).toEqual(Object.keys(actions).toSorted());
  expect(Object.keys(forms).toSorted()).toEqual(Object.keys(views).toSorted());
  expect(Object.keys(handlers.actions).toSorted()).toEqual(Object.values(actions).toSorted());
  expect(Object.keys(handlers.views).toSorted()).toEqual(Object.values(views).toSorted());
  expect(Object.keys(handlers.commands)).toEqual(Object.values(commands));
  expect(Object.keys(handlers.shortcuts)).toEqual(Object.values(shortcuts));
  for (const [key, { gesture }] of Object.entries(clicks))
    expect(gesture(studio.world)).toMatchObject({
      actionId: Object.entries(actions).find(([k]) => k === key)?.[1],
    });
});

describe('in one’s own studio', () => {
  test.each(rows)('%s', async (_name, { gesture, by, does, no }) => {
    const verdicts: Partial<Record<Role, string>> = {};
    for (const role of roles)
      verdicts[role] = verdictOf(await studio.attempt(people[role], gesture(studio.world)), no);
    expect(verdicts).toEqual(
      Object.fromEntries(roles.map((role) => [role, by.includes(role) ? does : 'no'])),
    );
  });
});

describe('of another studio', () => {
  const elsewhere = rows.filter(([, { anywhere }]) => anywhere === undefined);
  test.each(elsewhere)('%s: its ids mean nothing', async (_name, { gesture }) => {
    for (const role of roles) {
      const { changed, told, shown, wire } = await studio.attempt(people[role], gesture(studio.world), {
        studioId: otherStudio,
      });
      expect({ role, changed, answered: shown || told.length > 0, leaks: wire.includes(canary) }).toEqual({
        role,
        changed: { [ownStudio]: [], [otherStudio]: [] },
        answered: true,
        leaks: false,
      });
    }
  });

  const anywhere = rows.filter(([, row]) => row.anywhere === true);
  test.each(anywhere)('%s: done there alone', async (_name, { gesture }) => {
    for (const role of roles) {
      const { changed, wire } = await studio.attempt(people[role], gesture(studio.world), {
        studioId: otherStudio,
      });
      expect({ role, changed: changed[ownStudio], leaks: wire.includes(`${canary} clean`) }).toEqual({
        role,
        changed: [],
        leaks: false,
      });
    }
  });
});

async function changeSettings(stores: Stores, change: Partial<Settings>): Promise<void> {
  const standing = await stores.settings.find(ownStudio);
  if (standing === undefined) throw new Error('The studio has settings.');
  await stores.settings.save(ownStudio, { ...standing.settings, ...change }, 'g', '2026-11-04T09:00:00.000Z');
}

describe('a role taken away counts at the next click', () => {
  const ofRole = (role: Role) =>
    rows.filter(([, { by }]) => by.includes(role) && !by.includes('nobody') && by.length < roles.length);

  test.each(ofRole('coach'))('of a head coach: %s', async (_name, { gesture, no }) => {
    const outcome = await studio.attempt(people.coach, gesture(studio.world), {
      before: (stores) => changeSettings(stores, { headCoaches: ['U0NEXT'] }),
    });
    expect(verdictOf(outcome, no)).toBe('no');
  });

  test.each(ofRole('admin'))('of an admin: %s', async (_name, { gesture, no }) => {
    const outcome = await studio.attempt(people.admin, gesture(studio.world), {
      before: (stores) => changeSettings(stores, { admins: ['U0NEXT'] }),
    });
    expect(verdictOf(outcome, no)).toBe('no');
  });

  const ofInstructors: readonly string[] = [
    flow.onlyInstructorMarks,
    classes.onlyInstructor,
    classes.notThisClass,
  ];
  const ofClass = rows.filter(([, { no = '' }]) => ofInstructors.includes(no));
  test.each(ofClass)('of an instructor whose class was handed on: %s', async (_name, { gesture, no }) => {
    const outcome = await studio.attempt(people.owner, gesture(studio.world), {
      before: async ({ classes: store }) => {
        for (const scheduled of studio.world.classes)
          await store.save(ownStudio, { ...scheduled, instructorId: people.other });
      },
    });
    expect(verdictOf(outcome, no)).toBe('no');
  });

  test.each(rows.filter(([, { no }]) => no === notYours))(
    'of an author whose plan was taken over: %s',
    async (_name, { gesture }) => {
      const outcome = await studio.attempt(people.owner, gesture(studio.world), {
        before: async ({ plans }) => {
          for (const { id } of await plans.listByAuthor(ownStudio, people.owner, 50)) {
            const record = await plans.find(ownStudio, id);
            if (record !== undefined) await plans.update(ownStudio, { ...record, authorId: people.other });
          }
        },
      });
      expect(verdictOf(outcome, refusal({ code: 'not-your-plan', facts: { authorId: people.other } }))).toBe(
        'no',
      );
    },
  );
});

/** What no button of this app carries, whatever it stands for. */
const forged = (w: World): readonly string[] => [
  '',
  'x',
  '0',
  'null',
  '[]',
  '{}',
  '[[]]',
  '__proto__',
  'constructor',
  '<!channel>',
  'x'.repeat(100_000),
  `{"plan":"${'x'.repeat(100_000)}","version":1}`,
  `{"plan":"nowhere","version":1,"edit":"rounds A x2","name":"squat","comment":"${w.comment}","on":"week:${toldWeek}","at":[0,3]}`,
  `{"plan":"${w.draft}","version":99,"edit":"rounds A x2","name":"squat","on":"week:${toldWeek}","at":[0,3]}`,
  `{"plan":"${w.draft}","version":0}`,
  `{"plan":"${w.draft}","version":1.5}`,
  `{"plan":"${w.draft}","version":"1"}`,
  `{"plan":"${w.draft}"}`,
  `{"plan":["${w.draft}"],"version":1}`,
  `{"plan":"${w.draft}","version":1,"by":"${people.coach}"}`,
  `{"plan":"__proto__","version":1}`,
  `[["nowhere",1]]`,
  `[["${w.draft}","1"]]`,
  `["nowhere","2026-11-09T18:00:00.000Z","cancel Mon"]`,
  `["${w.upcoming}","2026-11-09T19:00:00.000Z","cancel Mon"]`,
  `["${w.upcoming}","2026-11-09"]`,
  `["mon:2026-13-45","2026-11-09T18:00:00.000Z"]`,
  `["${w.upcoming}","${startOf(w.upcoming)}","${'x'.repeat(10_000)}"]`,
  `${w.past}|11`,
  `${w.past}|-1`,
  `${w.past}|7|over`,
  `${w.past}|0x5`,
  `${w.past}|OVER`,
  'nowhere:2026-11-02|7',
  'nowhere|over',
  `${toldWeek}|muscle:nothing`,
  `9999-W99|${askedSaying}`,
  `2026-W40|${askedSaying}`,
  '{"part":"nothing"}',
  '{"part":"rooms","key":"Nowhere"}',
  '{"part":"slots","key":"nowhere"}',
  `{"part":"dose","key":"${'x'.repeat(10_000)}"}`,
  `{"classId":"nowhere","startsAt":"${startOf(w.upcoming)}","change":{"kind":"cancel"}}`,
  `{"classId":"${w.upcoming}","startsAt":"2026-11-09T19:00:00.000Z","change":{"kind":"cancel"}}`,
  `{"classId":"${w.upcoming}","startsAt":"${startOf(w.upcoming)}","change":{"kind":"delete"}}`,
  `{"classId":"${w.upcoming}","startsAt":"${startOf(w.upcoming)}","change":{"kind":"move","startsAt":{"date":"2026-02-31","time":"18:00"}}}`,
];

describe('a value that no button carries is refused with an answer, and changes nothing', () => {
  const carriers = [...Object.entries(clicks), ...Object.entries(forms)].filter(
    ([, { valueless }]) => valueless === undefined,
  );
  test.each(carriers)('%s', async (_name, { gesture, by, alsoRight }) => {
    const right = gesture(studio.world);
    // Whoever may do most.
    const personId = by.includes('coach') ? people.coach : people.owner;
    const wrong: unknown[] = [];
    for (const value of forged(studio.world).filter((each) => each !== alsoRight)) {
      const { changed, told, shown } = await studio.attempt(personId, withValue(right, value));
      const isRefused = changed[ownStudio].length === 0 && (shown || told.length > 0);
      if (!isRefused) wrong.push({ value: value.slice(0, 200), changed, told });
    }
    expect(wrong).toEqual([]);
  });
});

describe('a value made on an earlier version', () => {
  /** What the plans stand at is their second version. */
  const stale: readonly (readonly [string, (w: World) => Gesture])[] = [
    ['applyEdit', (w) => onPlan(actions.applyEdit, w.edited, { edit: 'swap C goblet squat' })],
    [
      'applyWeekEdit',
      (w) => onPlan(actions.applyWeekEdit, w.edited, { edit: 'swap C goblet squat', on: `week:${toldWeek}` }),
    ],
    ['chooseMove', (w) => onPlan(actions.chooseMove, w.edited, { at: [0, 6], name: 'squat jump' })],
    ['undo', (w) => onPlan(actions.undo, w.edited)],
    ['redo', (w) => onPlan(actions.redo, w.undone)],
    ['sendForReview', (w) => onPlan(actions.sendForReview, w.edited)],
    ['approve', (w) => onPlan(actions.approve, w.clean)],
    ['approveClean', (w) => press(actions.approveClean, JSON.stringify([[w.clean, 1]]))],
    ['approveWithNote form', (w) => onForm(views.approveWithNote, w.clean, { note: 'fine' })],
    ['askChanges form', (w) => onForm(views.askChanges, w.clean, { reason: 'longer rest' })],
  ];
  test.each(stale)('%s: changes nothing and is told', async (_name, gesture) => {
    const { changed, told } = await studio.attempt(people.coach, gesture(studio.world));
    expect({ changed: changed[ownStudio], told: told.length }).toEqual({ changed: [], told: 1 });
  });
});

describe('what stands otherwise is told, and nothing is changed', () => {
  const otherwise: readonly (readonly [string, Role, string, (w: World) => Gesture])[] = [
    [
      'a comment of another plan',
      'owner',
      flow.buttonGone,
      (w) => onPlan(actions.resolveComment, w.draft, { comment: w.comment }),
    ],
    [
      'a line that is not in the plan',
      'coach',
      coach.commentLineGone,
      (w) => onForm(views.comment, w.waits, { line: 'nowhere', comment: 'slower' }),
    ],
    [
      'a message that is no week’s report',
      'owner',
      flow.buttonGone,
      (w) => onPlan(actions.applyWeekEdit, w.draft, { edit: 'rounds A x2', on: `card:${w.draft}` }),
    ],
    [
      'a class that has not begun, marked',
      'owner',
      classes.notThisClass,
      (w) => press(actions.taughtAsPlanned, w.upcoming),
    ],
    [
      'a class that has not begun, marked by the form',
      'owner',
      classes.notThisClass,
      (w) => submit(views.taughtWithChanges, w.upcoming, { changes: 'fewer' }),
    ],
    [
      'a room the settings do not have',
      'owner',
      english.forms.roomGone,
      (w) => onForm(views.schedule, w.draft, { date: '2026-11-12', time: '18:00', room: 'Elsewhere' }),
    ],
    [
      'a head count that is none',
      'owner',
      english.forms.peopleHint,
      (w) => onForm(views.schedule, w.draft, { date: '2026-11-12', time: '18:00', people: '1e3' }),
    ],
    [
      'a room the settings do not have, to move to',
      'owner',
      english.forms.roomGone,
      (w) =>
        submit(views.changeClass, JSON.stringify([w.upcoming, startOf(w.upcoming)]), {
          what: 'move',
          date: '2026-11-10',
          time: '18:00',
          room: 'Elsewhere',
        }),
    ],
  ];
  test.each(otherwise)('%s', async (_name, role, words, gesture) => {
    const { changed, told } = await studio.attempt(people[role], gesture(studio.world));
    expect({ changed: changed[ownStudio], told }).toEqual({ changed: [], told: [words] });
  });

  test('a room the settings do not have, in the page that is handed in last', async () => {
    const change = { kind: 'move', startsAt: { date: '2026-11-10', time: '18:00' }, room: 'Elsewhere' };
    const { upcoming } = studio.world;
    const metadata = JSON.stringify({ classId: upcoming, startsAt: startOf(upcoming), change });
    const { changed, wire } = await studio.attempt(people.owner, submit(views.confirmChange, metadata, {}));
    expect({ changed: changed[ownStudio], told: wire.includes(english.forms.roomGone) }).toEqual({
      changed: [],
      told: true,
    });
  });

  test('nobody named yet: anyone sets the studio up, and nobody forgets someone else', async () => {
    const options = { before: (stores: Stores) => changeSettings(stores, { headCoaches: [], admins: [] }) };
    const open = await studio.attempt(people.nobody, press(actions.openSettings, 'home'), options);
    const forget = { kind: 'command', text: `forget <@${people.owner}>` } as const;
    const { changed, told } = await studio.attempt(people.nobody, forget, options);
    expect({ shown: open.shown, changed: changed[ownStudio], told }).toEqual({
      shown: true,
      changed: [],
      told: [data.onlyCoachForgets],
    });
  });
});

function withValue(gesture: Gesture, value: string): Gesture {
  if (gesture.kind === 'action') return { ...gesture, value };
  return gesture.kind === 'view' ? { ...gesture, metadata: value } : gesture;
}
