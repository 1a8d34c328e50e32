import { IANAZone } from 'luxon';
import { weekdays } from '../../domain/calendar/iso-week.ts';
import { kitItems } from '../../domain/catalogue/kit.ts';
import { muscles } from '../../domain/catalogue/muscles.ts';
import {
  groupRoles,
  type Room,
  type Settings,
  type SharedKit,
  type SlotHabit,
  type WeeklySlot,
} from '../../domain/settings.ts';
import type { FormValues } from '../handling.ts';
import type { Words } from '../words/words.ts';
import { readKitLine, slotLabel } from './settings-as-text.ts';
import { leastOf, noGroup, type SettingsPlace } from './settings-part.ts';

/** The settings with one part as filled in, or what is wrong, by block. */
export type PartRead =
  | { readonly kind: 'read'; readonly settings: Settings }
  | { readonly kind: 'wrong'; readonly byBlock: Readonly<Record<string, string>> };

type Form = {
  readonly values: FormValues;
  readonly settings: Settings;
  readonly says: Words['settings'];
};

/** Reads one part's form against the settings as they stand now; the other parts stay as they are. */
export function readSettingsPart(
  place: SettingsPlace,
  values: FormValues,
  settings: Settings,
  words: Words,
): PartRead {
  const form: Form = { values, settings, says: words.settings };
  const wrong = { ...numbersWrong(form), ...privateTexts(values, words) };
  if (Object.keys(wrong).length > 0) return { kind: 'wrong', byBlock: wrong };
  switch (place.part) {
    case 'studio':
      return readStudio(form);
    case 'roles':
      return readRoles(form);
    case 'rooms':
      return readRoom(form, place.key ?? '');
    case 'shared kit':
      return readShared(form);
    case 'slots':
      return readSlot(form, place.key ?? '');
    case 'habits':
      return readHabits(form);
    case 'times':
      return readTimes(form);
    case 'checks':
      return readChecks(form);
    case 'dose':
      return readDose(form);
    case 'retention': {
      const retention = numbersOf(form, 'retention', settings.retention);
      return read({ ...settings, retention: { ...settings.retention, ...retention } });
    }
    case 'own moves':
    case 'help':
      return read(settings);
  }
}

const timeOfDay = /^(?:[01]\d|2[0-3]):[0-5]\d$/;

const groupOfNumbers = /^(?:transitions|floors|checks|dose|retention)\./;
const wholeNumbers: ReadonlySet<string> = new Set([
  'slotMinutes',
  'countIn',
  'nextCue',
  'capacity',
  'door',
  'clearUp',
  'minutes',
  'people',
]);

/** A number that is none, or below what its field takes; one left empty stays as it was. */
function numbersWrong({ values, says }: Form): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.keys(values).flatMap((block) => {
      const isWhole = wholeNumbers.has(block) || /(?:Seconds|Days)$/.test(block);
      if (!isWhole && block !== 'area' && !groupOfNumbers.test(block)) return [];
      const typed = text(values, block);
      if (typed === '') return [];
      const value = number(values, block);
      if (value === undefined) return [[block, says.numberWrong]];
      if (isWhole && !Number.isInteger(value)) return [[block, says.wholeNumberWrong]];
      return value < leastOf(block) ? [[block, says.atLeast(leastOf(block))]] : [];
    }),
  );
}

/** Texts that others read. An emergency card speaks of injuries, of nobody's. */
function privateTexts(values: FormValues, words: Words): Readonly<Record<string, string>> {
  return Object.fromEntries(
    ['name', 'habits', 'emergency'].flatMap((block) => {
      const said = text(values, block);
      const word = block === 'emergency' ? words.someonesHealthIn(said) : words.privateWordIn(said);
      return word === undefined ? [] : [[block, words.privacy.inForm(word)]];
    }),
  );
}

function readStudio({ values, settings, says }: Form): PartRead {
  const zone = text(values, 'zone');
  const teamChannel = text(values, 'teamChannel');
  const reviewChannel = text(values, 'reviewChannel');
  const countdown = text(values, 'countdown')
    .split(/[\s,]+/)
    .filter((each) => each !== '')
    .map(Number);
  const weekday = weekdays.find((day) => day === text(values, 'reportDay'));
  const time = text(values, 'reportTime');
  const digestTime = text(values, 'digestTime') || 'off';
  const publicUrl = text(values, 'publicUrl');
  const isMinute = (minutes: number) => Number.isInteger(minutes) && minutes >= 1 && minutes <= 1_440;
  const wrong = {
    ...(IANAZone.isValidZone(zone) ? {} : { zone: says.zoneWrong }),
    ...(reviewChannel !== '' && reviewChannel === teamChannel ? { reviewChannel: says.sameChannel } : {}),
    ...(countdown.length >= 1 && countdown.length <= 5 && countdown.every(isMinute)
      ? {}
      : { countdown: says.countdownWrong }),
    ...(weekday === undefined ? { reportDay: says.missing } : {}),
    ...(timeOfDay.test(time) ? {} : { reportTime: says.missing }),
    ...(digestTime === 'off' || timeOfDay.test(digestTime) ? {} : { digestTime: says.missing }),
    ...(publicUrl === '' || isWebAddress(publicUrl) ? {} : { publicUrl: says.publicUrlWrong }),
  };
  if (Object.keys(wrong).length > 0 || weekday === undefined) return { kind: 'wrong', byBlock: wrong };
  const { teamChannel: _, reviewChannel: __, publicUrl: ___, ...others } = settings;
  return read({
    ...others,
    zone,
    ...(teamChannel === '' ? {} : { teamChannel }),
    ...(reviewChannel === '' ? {} : { reviewChannel }),
    ...(publicUrl === '' ? {} : { publicUrl }),
    countdownPosts: text(values, 'countdownPosts') === 'each',
    countdownMinutes: [...new Set(countdown)].toSorted((a, b) => b - a),
    digestTime,
    reportAt: { weekday, time },
    defaultSlotSeconds: (number(values, 'slotMinutes') ?? settings.defaultSlotSeconds / 60) * 60,
    countInSeconds: number(values, 'countIn') ?? settings.countInSeconds,
    nextCueSeconds: number(values, 'nextCue') ?? settings.nextCueSeconds,
  });
}

function isWebAddress(typed: string): boolean {
  return URL.canParse(typed) && /^https?:$/.test(new URL(typed).protocol);
}

function readRoles({ values, settings, says }: Form): PartRead {
  const headCoaches = many(values, 'headCoaches');
  const admins = many(values, 'admins');
  if (headCoaches.length + admins.length === 0)
    return { kind: 'wrong', byBlock: { headCoaches: says.lockedOut } };
  const trustedInstructors = many(values, 'trustedInstructors');
  const roleGroups = readRoleGroups(values, settings);
  const { admins: _, trustedInstructors: __, roleGroups: ___, ...others } = settings;
  const { smallEditsKeepApproval: ____, ...kept } = others;
  return read({
    ...kept,
    headCoaches,
    ...(admins.length === 0 ? {} : { admins }),
    ...(trustedInstructors.length === 0 ? {} : { trustedInstructors }),
    ...(Object.keys(roleGroups).length === 0 ? {} : { roleGroups }),
    ...(text(values, 'smallEdits') === 'keep' ? { smallEditsKeepApproval: true } : {}),
    soleCoachMayApproveOwn: text(values, 'ownPlan') === 'yes',
  });
}

/** Where the groups could not be read the form has no choice of them: what was set stays. */
function readRoleGroups(
  values: FormValues,
  { roleGroups = {} }: Settings,
): NonNullable<Settings['roleGroups']> {
  return Object.fromEntries(
    groupRoles.flatMap((role) => {
      const chosen = text(values, `roleGroup.${role}`) || (roleGroups[role] ?? noGroup);
      return chosen === noGroup ? [] : [[role, chosen]];
    }),
  );
}

function readRoom({ values, settings, says }: Form, key: string): PartRead {
  const standing = settings.rooms.find((room) => room.name === key);
  if (key !== '' && standing === undefined) return { kind: 'wrong', byBlock: { name: says.gone } };
  if (standing !== undefined && text(values, 'remove') === 'remove') return read(withoutRoom(settings, key));
  const name = text(values, 'name');
  const kitLines = lines(values, 'kit').map((line) => ({ line, kit: readKitLine(line) }));
  const unread = kitLines.find(({ kit }) => kit === undefined || kit.rest !== '');
  const taken = name !== key && settings.rooms.some((room) => room.name === name);
  const wrong = {
    ...(name === '' ? { name: says.missing } : taken ? { name: says.nameTaken } : {}),
    ...(unread === undefined ? {} : { kit: says.kitWrong(unread.line, kitItems.join(', ')) }),
  };
  if (Object.keys(wrong).length > 0) return { kind: 'wrong', byBlock: wrong };
  const capacity = number(values, 'capacity');
  const area = number(values, 'area');
  const emergencyCard = text(values, 'emergency');
  const room: Room = {
    name,
    kit: Object.fromEntries(
      kitLines.flatMap(({ kit }) => (kit === undefined ? [] : [[kit.item, kit.pieces]])),
    ),
    ...(capacity === undefined ? {} : { capacity }),
    ...(area === undefined ? {} : { areaSquareMetres: area }),
    doorSeconds: number(values, 'door') ?? 0,
    clearUpSeconds: number(values, 'clearUp') ?? 0,
    ...(emergencyCard === '' ? {} : { emergencyCard }),
  };
  if (standing === undefined) return read({ ...settings, rooms: [...settings.rooms, room] });
  return read(
    renameRoom(
      { ...settings, rooms: settings.rooms.with(settings.rooms.indexOf(standing), room) },
      key,
      name,
    ),
  );
}

function withoutRoom(settings: Settings, name: string): Settings {
  return {
    ...settings,
    rooms: settings.rooms.filter((room) => room.name !== name),
    slots: settings.slots.map((slot) => {
      const { room, ...others } = slot;
      return room === name ? others : slot;
    }),
    ...(settings.sharedKit === undefined
      ? {}
      : {
          sharedKit: settings.sharedKit
            .map((shared) => ({ ...shared, rooms: shared.rooms.filter((room) => room !== name) }))
            .filter(({ rooms }) => rooms.length > 1),
        }),
  };
}

/** Slots and shared kit go with a room's new name. */
function renameRoom(settings: Settings, from: string, to: string): Settings {
  if (from === to) return settings;
  return {
    ...settings,
    slots: settings.slots.map((slot) => (slot.room === from ? { ...slot, room: to } : slot)),
    ...(settings.sharedKit === undefined
      ? {}
      : {
          sharedKit: settings.sharedKit.map((shared) => ({
            ...shared,
            rooms: shared.rooms.map((room) => (room === from ? to : room)),
          })),
        }),
  };
}

function readShared({ values, settings, says }: Form): PartRead {
  const names = settings.rooms.map(({ name }) => name);
  const wrong: string[] = [];
  const shared = lines(values, 'shared').flatMap((line): readonly SharedKit[] => {
    const kit = readKitLine(line);
    const rooms = parts(kit?.rest ?? '');
    const unknown = rooms.find((room) => !names.includes(room));
    if (kit === undefined || rooms.length < 2) wrong.push(says.sharedWrong(line));
    else if (unknown !== undefined) wrong.push(says.roomUnknown(unknown, says.list(names)));
    else return [{ item: kit.item, pieces: kit.pieces, rooms }];
    return [];
  });
  if (wrong.length > 0) return { kind: 'wrong', byBlock: { shared: wrong.join(' ') } };
  const { sharedKit: _, ...others } = settings;
  return read({ ...others, ...(shared.length === 0 ? {} : { sharedKit: shared }) });
}

function readSlot({ values, settings, says }: Form, key: string): PartRead {
  const standing = settings.slots.find((slot) => slot.id === key);
  if (key !== '' && standing === undefined) return { kind: 'wrong', byBlock: { name: says.gone } };
  if (standing !== undefined && text(values, 'remove') === 'remove') return read(withoutSlot(settings, key));
  const name = text(values, 'name');
  const weekday = weekdays.find((day) => day === text(values, 'weekday'));
  const time = text(values, 'time');
  const minutes = number(values, 'minutes');
  const wrong = {
    ...(name === '' ? { name: says.missing } : {}),
    ...(weekday === undefined ? { weekday: says.missing } : {}),
    ...(timeOfDay.test(time) ? {} : { time: says.missing }),
    ...(minutes === undefined || minutes < 5 ? { minutes: says.missing } : {}),
  };
  if (Object.keys(wrong).length > 0 || weekday === undefined || minutes === undefined)
    return { kind: 'wrong', byBlock: wrong };
  const room = text(values, 'room');
  const instructorId = text(values, 'instructor');
  const people = number(values, 'people');
  const slot: WeeklySlot = {
    id: standing?.id ?? newSlotId(settings, weekday, time),
    name,
    weekday,
    time,
    seconds: minutes * 60,
    ...(settings.rooms.some((each) => each.name === room) ? { room } : {}),
    ...(instructorId === '' ? {} : { instructorId }),
    ...(people === undefined ? {} : { people }),
  };
  const slots =
    standing === undefined
      ? [...settings.slots, slot]
      : settings.slots.with(settings.slots.indexOf(standing), slot);
  return read({ ...settings, slots });
}

/** Day and time, with a number where there is one already. */
function newSlotId({ slots }: Settings, weekday: string, time: string): string {
  const base = `${weekday.toLowerCase()}-${time.replace(':', '')}`;
  const taken = new Set(slots.map(({ id }) => id));
  let id = base;
  for (let number = 2; taken.has(id); number += 1) id = `${base}-${number}`;
  return id;
}

function withoutSlot(settings: Settings, id: string): Settings {
  return {
    ...settings,
    slots: settings.slots.filter((slot) => slot.id !== id),
    slotHabits: settings.slotHabits
      .map((habit) => ({ ...habit, slotIds: habit.slotIds.filter((each) => each !== id) }))
      .filter(({ slotIds }) => slotIds.length > 0),
  };
}

function readHabits({ values, settings, says }: Form): PartRead {
  const { slots } = settings;
  const wrong: string[] = [];
  const slotHabits = lines(values, 'habits').flatMap((line): readonly SlotHabit[] => {
    const [, name = '', rest = ''] = /^([^:]+):\s*(\D.*|\S.*)$/.exec(line) ?? [];
    const named = parts(rest);
    if (name.trim() === '' || named.length === 0) {
      wrong.push(says.habitWrong(line));
      return [];
    }
    const found = named.map((each) => ({ each, slot: slotNamed(each, slots) }));
    const unknown = found.find(({ slot }) => slot === undefined);
    if (unknown !== undefined) {
      wrong.push(says.slotUnknown(unknown.each, says.list(slots.map((slot) => slotLabel(slot, slots)))));
      return [];
    }
    return [
      { name: name.trim(), slotIds: found.flatMap(({ slot }) => (slot === undefined ? [] : [slot.id])) },
    ];
  });
  return wrong.length > 0
    ? { kind: 'wrong', byBlock: { habits: wrong.join(' ') } }
    : read({ ...settings, slotHabits });
}

function slotNamed(name: string, slots: readonly WeeklySlot[]): WeeklySlot | undefined {
  const typed = name.toLowerCase();
  return slots.find(
    (slot) =>
      slotLabel(slot, slots).toLowerCase() === typed ||
      `${slot.weekday} ${slot.time}`.toLowerCase() === typed,
  );
}

function readTimes(form: Form): PartRead {
  const { settings } = form;
  return read({
    ...settings,
    transitions: { ...settings.transitions, ...numbersOf(form, 'transitions', settings.transitions) },
    floors: { ...settings.floors, ...numbersOf(form, 'floors', settings.floors) },
  });
}

const shares = ['lateStartShareOfBout', 'unusedShareOfTeachingTime'] as const;

function readChecks(form: Form): PartRead {
  const { values, settings, says } = form;
  const wrong = Object.fromEntries(
    shares
      .map((name) => `checks.${name}`)
      .filter((block) => (number(values, block) ?? 0) > 1)
      .map((block) => [block, says.shareWrong]),
  );
  if (Object.keys(wrong).length > 0) return { kind: 'wrong', byBlock: wrong };
  const standing = settings.checks.floorChangesAMinute;
  const level = (each: 1 | 2 | 3) => number(values, `checks.floorChangesAMinute.${each}`) ?? standing[each];
  return read({
    ...settings,
    checks: {
      ...settings.checks,
      ...numbersOf(form, 'checks', settings.checks),
      floorChangesAMinute: { 1: level(1), 2: level(2), 3: level(3) },
    },
  });
}

function readDose(form: Form): PartRead {
  const { values, settings, says } = form;
  const dose = { ...settings.dose, ...numbersOf(form, 'dose', settings.dose) };
  const chosen = new Set(many(values, 'firstPriority'));
  const stands =
    settings.firstPriority.length === chosen.size && settings.firstPriority.every((each) => chosen.has(each));
  const firstPriority = stands ? settings.firstPriority : muscles.filter((muscle) => chosen.has(muscle));
  const wrong = {
    ...(dose.low < dose.high && dose.high < dose.veryHigh ? {} : { 'dose.low': says.dosesOutOfOrder }),
    ...(firstPriority.length === 0 ? { firstPriority: says.firstPriorityNone } : {}),
  };
  if (Object.keys(wrong).length > 0) return { kind: 'wrong', byBlock: wrong };
  return read({
    ...settings,
    dose,
    firstPriority,
    mainLifts: text(values, 'mainLifts') === 'vary' ? 'vary' : 'keep',
    energyOn: text(values, 'energyOn') === 'on',
  });
}

/** The numbers of a group that were filled in; a value shown rounded and left alone stays exact. */
function numbersOf(
  { values }: Form,
  group: string,
  standing: Readonly<Record<string, unknown>>,
): Readonly<Record<string, number>> {
  return Object.fromEntries(
    Object.entries(standing).flatMap(([key, before]) => {
      const value = number(values, `${group}.${key}`);
      if (value === undefined || typeof before !== 'number') return [];
      return Math.abs(value - before) < 0.001 ? [] : [[key, value]];
    }),
  );
}

function read(settings: Settings): PartRead {
  return { kind: 'read', settings };
}

function text(values: FormValues, block: string): string {
  const value = values[block];
  return typeof value === 'string' ? value.trim() : '';
}

function many(values: FormValues, block: string): readonly string[] {
  const value = values[block];
  return value === undefined || typeof value === 'string' ? [] : [...new Set(value)];
}

function number(values: FormValues, block: string): number | undefined {
  const typed = text(values, block);
  const value = Number(typed);
  return typed === '' || !Number.isFinite(value) || value < 0 ? undefined : value;
}

function lines(values: FormValues, block: string): readonly string[] {
  return text(values, block)
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

function parts(list: string): readonly string[] {
  return list
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');
}
