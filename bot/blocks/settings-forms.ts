import type { InputBlock, KnownBlock, ModalView } from '@slack/types';
import { weekdays } from '../../domain/calendar/iso-week.ts';
import type { Catalogue } from '../../domain/catalogue/catalogue.ts';
import { muscles } from '../../domain/catalogue/muscles.ts';
import { type DefaultSource, defaultSources } from '../../domain/default-sources.ts';
import { defaultSettings, type GroupRole, type Settings } from '../../domain/settings.ts';
import { habitsText, kitText, sharedKitText } from '../flows/settings-as-text.ts';
import { leastOf, noGroup, type SettingsPlace, settingsParts } from '../flows/settings-part.ts';
import type { GroupsRead } from '../handling.ts';
import { actions, views } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { button, buttons, context, section } from './elements.ts';
import { inertText } from './escape.ts';
import {
  channelField,
  formView,
  multiSelectField,
  numberField,
  peopleField,
  personField,
  plainText,
  selectField,
  textField,
  timeField,
} from './form-parts.ts';
import { limits } from './limits.ts';
import { ownMoveForm } from './own-move-form.ts';
import { printSettingsPlace } from './settings-place.ts';

type Show = {
  /** As they are kept: people of user groups are not among those named. */
  readonly settings: Settings;
  readonly catalogue: Catalogue;
  readonly words: Words;
  /** Read for the roles alone. */
  readonly groups?: GroupsRead;
};

/** All parts, each a tap away; `said` tells what was just saved. */
export function settingsMenu({ words }: Show, said = ''): ModalView {
  const { settings } = words;
  return reading(
    settings.title,
    [
      ...(said === '' ? [] : [section('said', said)]),
      ...settingsParts.map((part, place) => ({
        ...section(`part-${place + 1}`, `*${settings.part(part)}*\n${settings.about(part)}`),
        accessory: button(
          { action: actions.settingsPart, label: settings.change, value: printSettingsPlace({ part }) },
          place + 1,
        ),
      })),
    ],
    words,
  );
}

/** One part: a list to choose from, or a form. */
export function settingsView(place: SettingsPlace, show: Show, said = ''): ModalView {
  const { settings, words } = show;
  const says = words.settings;
  switch (place.part) {
    case 'help':
      return reading(
        says.title,
        [...says.notes.map((note, at) => section(`note-${at + 1}`, note)), ...backButton(words)],
        words,
      );
    case 'rooms':
      if (place.key !== undefined) return partForm(place, roomFields(place.key, show), words);
      return list(
        place,
        settings.rooms.map(({ name, kit, capacity }) => ({
          key: name,
          text: `*${inertText(name)}*\n${kitText(kit).replaceAll('\n', ', ')}${capacity === undefined ? '' : ` · ${says.upTo(capacity)}`}`,
        })),
        says.addRoom,
        words,
        said,
      );
    case 'slots':
      if (place.key !== undefined) return partForm(place, slotFields(place.key, show), words);
      return list(
        place,
        settings.slots.map((slot) => ({
          key: slot.id,
          text: `*${inertText(slot.name)}*\n${slot.weekday} ${slot.time} · ${slot.seconds / 60} min${slot.room === undefined ? '' : ` · ${inertText(slot.room)}`}${slot.instructorId === undefined ? '' : ` · ${words.person(slot.instructorId)}`}`,
        })),
        says.addSlot,
        words,
        said,
      );
    case 'own moves':
      return ownMovesView(place, show, said);
    case 'studio':
      return partForm(place, studioFields(show), words);
    case 'roles':
      return partForm(place, roleFields(show), words);
    case 'shared kit':
      return partForm(
        place,
        [
          textField({
            id: 'shared',
            label: says.shared,
            hint: says.sharedHint,
            optional: true,
            multiline: true,
            most: 2_000,
            value: sharedKitText(settings.sharedKit ?? []),
          }),
        ],
        words,
      );
    case 'habits':
      return partForm(
        place,
        [
          textField({
            id: 'habits',
            label: says.habits,
            hint: says.habitsHint,
            optional: true,
            multiline: true,
            most: 3_000,
            value: habitsText(settings),
          }),
        ],
        words,
      );
    case 'times':
      return partForm(
        place,
        [
          ...numbers('transitions', says.transitions, settings.transitions, words),
          ...numbers('floors', says.floors, settings.floors, words),
        ],
        words,
      );
    case 'checks':
      return partForm(place, checkFields(show), words);
    case 'dose':
      return partForm(place, doseFields(show), words);
    case 'retention':
      return partForm(place, numbers('retention', says.retention, settings.retention, words), words);
  }
}

function ownMovesView(place: SettingsPlace, show: Show, said: string): ModalView {
  const { settings, catalogue, words } = show;
  const own = settings.ownMoves.find(({ id }) => id === place.key);
  if (own !== undefined) return ownMoveForm(own.id, { own }, catalogue, words);
  if (place.key !== undefined) return ownMoveForm('', {}, catalogue, words);
  const names = Object.entries(settings.ownNames).map(
    ([name, id]) => `“${inertText(name)}” = ${catalogue.byId.get(id)?.name ?? id}`,
  );
  const view = list(
    place,
    settings.ownMoves.map((move) => ({
      key: move.id,
      text: `*${move.name}*${move.retired ? `\n${words.ownMove.retired}` : ''}`,
    })),
    words.settings.addMove,
    words,
    said,
  );
  const nicknames = `*${words.settings.nicknames}*  ${words.settings.list(names)}\n${words.settings.nicknamesHow}`;
  const [moves, below] = [view.blocks.slice(0, -2), view.blocks.slice(-2)];
  return {
    ...view,
    blocks: [...moves.slice(0, limits.viewBlocks - 3), section('nicknames', nicknames), ...below],
  };
}

/** Numbers of a group, each with its standard value and where that comes from. */
function numbers<Key extends string>(
  group: 'transitions' | 'floors' | 'dose' | 'retention' | 'checks',
  labels: Readonly<Record<Key, string>>,
  values: Readonly<Record<Key, unknown>>,
  words: Words,
): readonly InputBlock[] {
  const standards = new Map<string, unknown>(Object.entries(defaultSettings[group]));
  const sources = new Map<string, DefaultSource>(Object.entries(defaultSources[group]));
  const standing = new Map<string, unknown>(Object.entries(values));
  return Object.entries<string>(labels).flatMap(([key, label]) => {
    const [standard, value, source] = [standards.get(key), standing.get(key), sources.get(key)];
    if (typeof standard !== 'number' || typeof value !== 'number' || source === undefined) return [];
    return [
      numberField({
        id: `${group}.${key}`,
        label,
        hint: words.settings.standard(rounded(standard), source),
        value: rounded(value),
        least: leastOf(`${group}.${key}`),
        most: 100_000,
        ...(/(?:Seconds|Days)$/.test(key) && Number.isInteger(value) ? {} : { decimals: true }),
      }),
    ];
  });
}

function checkFields({ settings, words }: Show): readonly InputBlock[] {
  const { checks, standard, level } = words.settings;
  const byLevel = ([1, 2, 3] as const).map((each) =>
    numberField({
      id: `checks.floorChangesAMinute.${each}`,
      label: level(checks.floorChangesAMinute, each),
      hint: standard(
        defaultSettings.checks.floorChangesAMinute[each],
        defaultSources.checks.floorChangesAMinute,
      ),
      value: settings.checks.floorChangesAMinute[each],
      least: 0,
      most: 60,
      decimals: true,
    }),
  );
  return [...numbers('checks', checks, settings.checks, words), ...byLevel];
}

function doseFields({ settings, words }: Show): readonly InputBlock[] {
  const says = words.settings;
  return [
    ...numbers('dose', says.dose, settings.dose, words),
    multiSelectField({
      id: 'firstPriority',
      label: says.firstPriority,
      hint: says.firstPriorityHint,
      choices: muscles.map((muscle) => ({ value: muscle, label: words.catalogue.muscle(muscle) })),
      values: settings.firstPriority,
    }),
    selectField({
      id: 'mainLifts',
      label: says.mainLifts,
      hint: says.mainLiftsHint,
      value: settings.mainLifts,
      choices: [
        { value: 'keep', label: says.keep },
        { value: 'vary', label: says.vary },
      ],
    }),
    selectField({
      id: 'energyOn',
      label: says.energy,
      hint: says.energyHint,
      value: settings.energyOn ? 'on' : 'off',
      choices: [
        { value: 'off', label: says.off },
        { value: 'on', label: says.on },
      ],
    }),
  ];
}

function studioFields({ settings, words }: Show): readonly InputBlock[] {
  const says = words.settings;
  return [
    textField({ id: 'zone', label: says.zone, hint: says.zoneHint, most: 60, value: settings.zone }),
    channelField({
      id: 'teamChannel',
      label: says.teamChannel,
      hint: says.teamChannelHint,
      optional: true,
      ...(settings.teamChannel === undefined ? {} : { value: settings.teamChannel }),
    }),
    channelField({
      id: 'reviewChannel',
      label: says.reviewChannel,
      hint: says.reviewChannelHint,
      optional: true,
      ...(settings.reviewChannel === undefined ? {} : { value: settings.reviewChannel }),
    }),
    textField({
      id: 'countdown',
      label: says.countdown,
      hint: says.countdownHint,
      most: 60,
      value: settings.countdownMinutes.join(', '),
    }),
    selectField({
      id: 'countdownPosts',
      label: says.countdownPosts,
      hint: says.countdownPostsHint,
      value: settings.countdownPosts ? 'each' : 'one',
      choices: [
        { value: 'one', label: says.onePost },
        { value: 'each', label: says.eachPost },
      ],
    }),
    timeField({
      id: 'digestTime',
      label: says.digest,
      hint: says.digestHint,
      optional: true,
      ...(settings.digestTime === 'off' ? {} : { value: settings.digestTime }),
    }),
    selectField({
      id: 'reportDay',
      label: says.reportDay,
      hint: says.reportHint,
      value: settings.reportAt.weekday,
      choices: weekdays.map((day) => ({ value: day, label: day })),
    }),
    timeField({ id: 'reportTime', label: says.reportTime, value: settings.reportAt.time }),
    numberField({
      id: 'slotMinutes',
      label: says.slotMinutes,
      hint: says.slotMinutesHint,
      value: settings.defaultSlotSeconds / 60,
      least: leastOf('slotMinutes'),
      most: 300,
    }),
    numberField({
      id: 'countIn',
      label: says.countIn,
      hint: says.countInHint,
      value: settings.countInSeconds,
      least: 0,
      most: 60,
    }),
    numberField({
      id: 'nextCue',
      label: says.nextCue,
      hint: says.nextCueHint,
      value: settings.nextCueSeconds,
      least: 0,
      most: 60,
    }),
    textField({
      id: 'publicUrl',
      label: says.publicUrl,
      hint: says.publicUrlHint,
      optional: true,
      most: 200,
      value: settings.publicUrl ?? '',
    }),
  ];
}

function roleFields({ settings, words, groups }: Show): readonly KnownBlock[] {
  const says = words.settings;
  return [
    ...groupsAside(groups, words),
    peopleField({
      id: 'headCoaches',
      label: says.headCoaches,
      hint: says.headCoachesHint,
      optional: true,
      values: settings.headCoaches,
    }),
    ...groupField('headCoaches', { settings, words, groups }),
    peopleField({
      id: 'admins',
      label: says.admins,
      hint: says.adminsHint,
      optional: true,
      values: settings.admins ?? [],
    }),
    ...groupField('admins', { settings, words, groups }),
    peopleField({
      id: 'trustedInstructors',
      label: says.trusted,
      hint: says.trustedHint,
      optional: true,
      values: settings.trustedInstructors ?? [],
    }),
    ...groupField('trustedInstructors', { settings, words, groups }),
    selectField({
      id: 'smallEdits',
      label: says.smallEdits,
      hint: says.smallEditsHint,
      value: settings.smallEditsKeepApproval === true ? 'keep' : 'review',
      choices: [
        { value: 'review', label: says.smallEditsReview },
        { value: 'keep', label: says.smallEditsKeep },
      ],
    }),
    selectField({
      id: 'ownPlan',
      label: says.ownPlan,
      hint: says.ownPlanHint,
      value: settings.soleCoachMayApproveOwn ? 'yes' : 'no',
      choices: [
        { value: 'no', label: says.ownPlanNo },
        { value: 'yes', label: says.ownPlanYes },
      ],
    }),
  ];
}

type GroupShow = Pick<Show, 'settings' | 'words'> & { readonly groups: GroupsRead | undefined };

/** Why no user group can be chosen, where that is so. */
function groupsAside(groups: GroupsRead | undefined, { settings }: Words): readonly KnownBlock[] {
  if (groups === undefined) return [];
  if (groups.kind === 'not read') return [section('groups', settings.groupsNotRead(groups.code))];
  return groups.groups.length === 0 ? [context('groups', settings.noGroups)] : [];
}

/** One of the workspace's user groups, or none; the form of the platform has no choice of its own for it. */
function groupField(role: GroupRole, { settings, words, groups }: GroupShow): readonly InputBlock[] {
  const says = words.settings;
  const standing = settings.roleGroups?.[role];
  if (groups?.kind !== 'read' || (groups.groups.length === 0 && standing === undefined)) return [];
  const isGone = standing !== undefined && !groups.groups.some(({ id }) => id === standing);
  const listed = groups.groups
    .toSorted((one, other) => Number(other.id === standing) - Number(one.id === standing))
    .map(({ id, handle, people }) => ({ value: id, label: says.groupChoice(handle, people) }));
  return [
    selectField({
      id: `roleGroup.${role}`,
      label: says.roleGroup(role),
      hint: says.roleGroupHint,
      value: standing ?? noGroup,
      choices: [
        { value: noGroup, label: says.noGroup },
        ...(isGone ? [{ value: standing, label: says.groupNotListed(standing) }] : []),
        ...listed,
      ],
    }),
  ];
}

function roomFields(key: string, { settings, words }: Show): readonly InputBlock[] {
  const says = words.settings;
  const room = settings.rooms.find(({ name }) => name === key);
  return [
    textField({ id: 'name', label: says.name, hint: says.nameHint, most: 60, value: room?.name ?? '' }),
    textField({
      id: 'kit',
      label: says.kit,
      hint: says.kitHint,
      optional: true,
      multiline: true,
      most: 1_000,
      value: kitText(room?.kit ?? {}),
    }),
    numberField({
      id: 'capacity',
      label: says.capacity,
      hint: says.capacityHint,
      optional: true,
      least: leastOf('capacity'),
      most: 1_000,
      ...(room?.capacity === undefined ? {} : { value: room.capacity }),
    }),
    numberField({
      id: 'area',
      label: says.area,
      hint: says.areaHint,
      optional: true,
      least: leastOf('area'),
      most: 10_000,
      decimals: true,
      ...(room?.areaSquareMetres === undefined ? {} : { value: room.areaSquareMetres }),
    }),
    numberField({
      id: 'door',
      label: says.door,
      hint: says.doorHint,
      value: room?.doorSeconds ?? 0,
      least: 0,
      most: 1_800,
    }),
    numberField({
      id: 'clearUp',
      label: says.clearUp,
      hint: says.doorHint,
      value: room?.clearUpSeconds ?? 0,
      least: 0,
      most: 1_800,
    }),
    textField({
      id: 'emergency',
      label: says.emergency,
      hint: says.emergencyHint,
      optional: true,
      multiline: true,
      most: 1_000,
      value: room?.emergencyCard ?? '',
    }),
    ...(room === undefined ? [] : [removeField(words)]),
  ];
}

function slotFields(key: string, { settings, words }: Show): readonly InputBlock[] {
  const says = words.settings;
  const slot = settings.slots.find(({ id }) => id === key);
  return [
    textField({ id: 'name', label: says.name, hint: says.nameHint, most: 60, value: slot?.name ?? '' }),
    selectField({
      id: 'weekday',
      label: says.weekday,
      choices: weekdays.map((day) => ({ value: day, label: day })),
      ...(slot === undefined ? {} : { value: slot.weekday }),
    }),
    timeField({ id: 'time', label: says.time, ...(slot === undefined ? {} : { value: slot.time }) }),
    numberField({
      id: 'minutes',
      label: says.minutes,
      hint: says.minutesHint,
      value: (slot?.seconds ?? settings.defaultSlotSeconds) / 60,
      least: leastOf('minutes'),
      most: 300,
    }),
    ...(settings.rooms.length === 0
      ? []
      : [
          selectField({
            id: 'room',
            label: says.room,
            hint: says.roomHint,
            optional: true,
            choices: settings.rooms.map(({ name }) => ({ value: name, label: name })),
            ...(slot?.room === undefined ? {} : { value: slot.room }),
          }),
        ]),
    personField({
      id: 'instructor',
      label: says.instructor,
      hint: says.instructorHint,
      optional: true,
      ...(slot?.instructorId === undefined ? {} : { value: slot.instructorId }),
    }),
    numberField({
      id: 'people',
      label: says.people,
      hint: says.peopleHint,
      optional: true,
      least: leastOf('people'),
      most: 200,
      ...(slot?.people === undefined ? {} : { value: slot.people }),
    }),
    ...(slot === undefined ? [] : [removeField(words)]),
  ];
}

function removeField({ settings }: Words): InputBlock {
  return selectField({
    id: 'remove',
    label: settings.remove,
    value: 'keep',
    choices: [
      { value: 'keep', label: settings.keepIt },
      { value: 'remove', label: settings.removeIt },
    ],
  });
}

function partForm(place: SettingsPlace, fields: readonly KnownBlock[], words: Words): ModalView {
  const says = words.settings;
  return formView(
    {
      callbackId: views.settings,
      title: says.title,
      submit: says.save,
      metadata: printSettingsPlace(place),
      blocks: [context('about', `*${says.part(place.part)}*  ${says.about(place.part)}`), ...fields],
    },
    words,
  );
}

type Item = { readonly key: string; readonly text: string };

/** What there is, each with a button to change it, and one to add. */
function list(
  { part }: SettingsPlace,
  items: readonly Item[],
  add: string,
  words: Words,
  said: string,
): ModalView {
  const says = words.settings;
  const open = (key: string) => printSettingsPlace({ part, key });
  return reading(
    says.title,
    [
      ...(said === '' ? [] : [section('said', said)]),
      context('about', `*${says.part(part)}*  ${says.about(part)}`),
      ...(items.length === 0 ? [section('none', says.ownMovesNone)] : []),
      ...items.slice(0, limits.viewBlocks - 6).map(({ key, text }, at) => ({
        ...section(`item-${at + 1}`, text),
        accessory: button({ action: actions.settingsPart, label: says.change, value: open(key) }, at + 1),
      })),
      ...buttons('more', [{ action: actions.settingsPart, label: add, value: open(''), style: 'primary' }]),
      ...backButton(words),
    ],
    words,
  );
}

function backButton({ settings }: Words): readonly KnownBlock[] {
  return buttons('back', [{ action: actions.openSettings, label: settings.back, value: 'menu' }]);
}

function reading(title: string, blocks: readonly KnownBlock[], words: Words): ModalView {
  return {
    type: 'modal',
    title: plainText(title, limits.modalTitle),
    close: plainText(words.forms.close, limits.modalTitle),
    blocks: blocks.slice(0, limits.viewBlocks),
  };
}

function rounded(value: number): number {
  return Math.round(value * 1_000) / 1_000;
}
