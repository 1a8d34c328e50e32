import type { HomeView, KnownBlock } from '@slack/types';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Home, HomeLine } from '../flows/home-of.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { approveCleanButton, type BatchLine, mostOfTrouble } from './batch-message.ts';
import { changeButton } from './change-button.ts';
import { planValue, titleOf } from './draft-card.ts';
import { type ButtonFacts, button, buttons, context, header, linked, section, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { plainText } from './form-parts.ts';
import { clip, limits } from './limits.ts';

/** Lines of one part; what is over is counted. */
const mostLines = 10;

export function renderHome(home: Home, words: Words): HomeView {
  const says = words.home;
  const coach = home.coach;
  const blocks: readonly KnownBlock[] = [
    ...buttons('write', [{ action: actions.openDraft, label: says.write, value: 'home', style: 'primary' }]),
    ...(coach === undefined ? [] : approvalPart(coach.approval, words)),
    ...setUpPart(home, words),
    ...classPart('today', says.today, home.today, words),
    ...part('waiting', says.waitsForMe, home.waiting, words),
    ...classPart('later', says.week, home.later, words),
    ...part('drafts', says.drafts, home.drafts, words),
    ...nothingPart(home, words),
    ...(coach === undefined ? [] : coachPart(coach, words)),
    ...buttons('own', ownButtons(home, words)),
    context('standing', `${says.how}\n_${words.standingLine}_`),
  ];
  return { type: 'home', blocks: blocks.slice(0, limits.viewBlocks) };
}

function setUpPart({ setUp }: Home, { home }: Words): readonly KnownBlock[] {
  if (setUp.length === 0) return [];
  return [
    header('set-up-title', home.setUp),
    ...sections(
      'set-up',
      setUp.map((step) => `• ${home.setUpStep(step)}`),
    ),
    ...buttons('set-up-next', [{ action: actions.openSettings, label: home.settings, value: 'home' }]),
  ];
}

/** What is empty, in one line; nothing where nothing is. */
function nothingPart({ today, waiting, later, drafts, coach }: Home, { home }: Words): readonly KnownBlock[] {
  const none = [
    coach?.approval.length === 0 ? home.none.approval : '',
    today.length === 0 ? home.none.today : '',
    waiting.length === 0 ? home.none.waiting : '',
    later.length === 0 ? home.none.later : '',
    drafts.length === 0 ? home.none.drafts : '',
  ].filter((each) => each !== '');
  return none.length === 0 ? [] : [context('none', home.nothing(none))];
}

function part(id: string, title: string, lines: readonly HomeLine[], words: Words): readonly KnownBlock[] {
  if (lines.length === 0) return [];
  const told = lines.slice(0, mostLines).map((line) => lineText(line, words));
  const more = lines.length - told.length;
  return [header(`${id}-title`, title), ...sections(id, more > 0 ? [...told, words.home.more(more)] : told)];
}

/** The same with a line a class, each with the way to move or cancel it. */
function classPart(
  id: string,
  title: string,
  lines: readonly HomeLine[],
  words: Words,
): readonly KnownBlock[] {
  if (lines.length === 0) return [];
  const shown = lines.slice(0, mostLines);
  const more = lines.length - shown.length;
  return [
    header(`${id}-title`, title),
    ...shown.map((line, place) => classLine(id, line, place + 1, words)),
    ...(more > 0 ? [context(`${id}-more`, words.home.more(more))] : []),
  ];
}

function classLine(id: string, line: HomeLine, place: number, words: Words): KnownBlock {
  const text = section(`${id}-${place}`, lineText(line, words));
  if (line.scheduled === undefined || line.mayChange === undefined) return text;
  return { ...text, accessory: button(changeButton(line.scheduled, words), place) };
}

function lineText({ title, startsAt, record, scheduled, waits, link }: HomeLine, words: Words): string {
  const { home } = words;
  const state =
    scheduled?.state === 'cancelled'
      ? home.cancelled
      : record === undefined
        ? home.noPlan
        : home.state(record.state, record.approvedVersion !== undefined);
  return [
    startsAt === undefined ? '' : words.when(startsAt),
    `*${linked(inertText(clip(title ?? words.card.untitled, mostOfTitle)), link)}*`,
    waits === undefined ? state : home.wait(waits),
    scheduled?.state === 'moved' ? home.moved : '',
    scheduled?.coverOpen === undefined ? '' : home.coverOpen,
  ]
    .filter((each) => each !== '')
    .join(' · ');
}

const mostOfTitle = 150;

/** What waits for a coach: the clean ones by one tap, the others with what to look at. */
function approvalPart(approval: readonly BatchLine[], words: Words): readonly KnownBlock[] {
  if (approval.length === 0) return [];
  const shown = approval.slice(0, mostLines);
  const more = approval.length - shown.length;
  return [
    header('approval-title', words.home.approval),
    ...shown.map((line, place) => approvalLine(line, place, words)),
    ...(more > 0 ? [context('approval-more', words.home.more(more))] : []),
    ...approveCleanButton(
      approval.filter(({ trouble }) => trouble === ''),
      { words },
    ),
  ];
}

function coachPart(coach: NonNullable<Home['coach']>, words: Words): readonly KnownBlock[] {
  const { home } = words;
  return [
    header('muscles-title', home.muscles),
    section('muscles', `\`\`\`${tableLines(coach, words).join('\n')}\`\`\``),
    context('muscles-how', home.musclesHow),
    ...othersPart(coach.others, words),
  ];
}

/** A head coach may move or cancel the classes of others too. */
function othersPart(others: readonly ScheduledClass[], words: Words): readonly KnownBlock[] {
  const { classChange } = words;
  const options = others
    .filter(({ id }) => id.length <= limits.optionText)
    .slice(0, limits.selectOptions)
    .map((each) => ({
      text: plainText(
        `${words.when(each.startsAt)} ${each.title ?? words.classes.untitled}`,
        limits.optionText,
      ),
      value: each.id,
    }));
  if (options.length === 0) return [];
  return [
    header('others-title', classChange.others),
    {
      ...section('others', classChange.othersHow),
      accessory: {
        type: 'static_select',
        action_id: actions.chooseOtherClass,
        placeholder: plainText(classChange.othersChoose),
        options,
      },
    },
  ];
}

function approvalLine({ open, trouble, link }: BatchLine, place: number, words: Words): KnownBlock {
  const { record, scheduled, version } = open;
  const lines = [
    [
      `*${linked(titleOf(version.plan, words), link)}*`,
      words.person(record.authorId, 'an instructor'),
      scheduled === undefined ? '' : words.when(scheduled.startsAt),
    ]
      .filter((each) => each !== '')
      .join(' · '),
    trouble === '' ? words.home.clean : clip(trouble, mostOfTrouble),
  ];
  return {
    ...section(`approval-${place + 1}`, lines.join('\n')),
    accessory: button(
      { action: actions.timeline, label: words.home.look, value: planValue(open) },
      place + 1,
    ),
  };
}

const cellWidth = 3;
/** From here on halves would not fit a phone's line, and say nothing more. */
const wholeFrom = 10;

/** Numbers in cells of a fixed width, a dot for none, `?` for none known; narrow enough for a phone, Sunday included. */
function tableLines(
  { muscles: rows, unknownDays }: Pick<NonNullable<Home['coach']>, 'muscles' | 'unknownDays'>,
  { home, catalogue }: Words,
): readonly string[] {
  const width = Math.max(...rows.map(({ muscle }) => catalogue.muscle(muscle).length), 0);
  const head = `${' '.repeat(width)}${home.dayHeads.map((day) => day.padStart(cellWidth)).join('')}`;
  return [
    head,
    ...rows.map(
      ({ muscle, setsByDay }) =>
        `${catalogue.muscle(muscle).padEnd(width)}${setsByDay.map((sets, day) => cellText(sets, unknownDays.has(day)).padStart(cellWidth)).join('')}`,
    ),
  ];
}

function cellText(sets: number, isUnknown: boolean): string {
  if (sets >= wholeFrom) return String(Math.round(sets));
  const halves = Math.round(sets * 2);
  if (halves === 0) return isUnknown ? '?' : '·';
  const whole = Math.floor(halves / 2);
  return halves % 2 === 0 ? String(whole) : `${whole === 0 ? '' : whole}½`;
}

function ownButtons({ maySet }: Home, { home }: Words): readonly ButtonFacts[] {
  return [
    ...(maySet ? [{ action: actions.openSettings, label: home.settings, value: 'home' }] : []),
    { action: actions.openNotices, label: home.notices, value: 'home' },
    { action: actions.showMyData, label: home.data, value: 'home' },
  ];
}
