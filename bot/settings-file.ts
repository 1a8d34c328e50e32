import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { isDeepStrictEqual } from 'node:util';
import { IANAZone } from 'luxon';
import { z } from 'zod';
import { kitItems } from '../domain/catalogue/kit.ts';
import { muscles } from '../domain/catalogue/muscles.ts';
import type { Storage, StudioId } from '../domain/ports.ts';
import { defaultSettings, groupRoles, type Settings } from '../domain/settings.ts';
import type { Log } from './log.ts';

type GivenSettings = z.infer<typeof file>;

export type SettingsRead =
  | {
      readonly kind: 'read';
      /** What the file says over the defaults. */
      readonly settings: Settings;
      readonly given: GivenSettings;
      readonly fingerprint: string;
    }
  | { readonly kind: 'unusable'; readonly problems: readonly string[] };

const weekday = z.enum(['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun']);
const time = z.string().regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/, 'write a time of day such as "18:30"');
const seconds = z.number().int().nonnegative();
const count = z.number().int().positive();
const person = z.string().regex(/^[UW][A-Z0-9]+$/, 'write a member id such as "U012ABCDEF"');
const group = z.string().regex(/^S[A-Z0-9]+$/, 'write a user group id such as "S012ABCDEF"');
const channel = z.string().regex(/^[CG][A-Z0-9]+$/, 'write a channel id such as "C012ABCDEF"');
const name = z.string().trim().min(1);

const room = z.strictObject({
  name,
  kit: z.partialRecord(z.enum(kitItems), z.number().int().nonnegative()).default({}),
  capacity: count.exactOptional(),
  areaSquareMetres: z.number().positive().exactOptional(),
  doorSeconds: seconds.default(0),
  clearUpSeconds: seconds.default(0),
  emergencyCard: name.exactOptional(),
});

const slot = z.strictObject({
  id: name,
  name,
  weekday,
  time,
  seconds: count.default(defaultSettings.defaultSlotSeconds),
  room: name.exactOptional(),
  instructorId: person.exactOptional(),
  people: count.exactOptional(),
});

const numbersLike = <Shape extends Readonly<Record<string, number>>>(defaults: Shape) =>
  z.strictObject(
    Object.fromEntries(Object.keys(defaults).map((key) => [key, z.number().nonnegative().exactOptional()])),
  );

/** What the file may say; all of it optional, the names those of `Settings`. */
const file = z.strictObject({
  zone: z
    .string()
    .refine((zone) => IANAZone.isValidZone(zone), 'write a time zone such as "Europe/Berlin"')
    .exactOptional(),
  reviewChannel: channel.exactOptional(),
  teamChannel: channel.exactOptional(),
  headCoaches: z.array(person).exactOptional(),
  admins: z.array(person).exactOptional(),
  soleCoachMayApproveOwn: z.boolean().exactOptional(),
  trustedInstructors: z.array(person).exactOptional(),
  roleGroups: z.partialRecord(z.enum(groupRoles), group).exactOptional(),
  smallEditsKeepApproval: z.boolean().exactOptional(),
  rooms: z.array(room).exactOptional(),
  slots: z.array(slot).exactOptional(),
  slotHabits: z.array(z.strictObject({ name, slotIds: z.array(name).min(1) })).exactOptional(),
  defaultSlotSeconds: count.exactOptional(),
  countInSeconds: seconds.exactOptional(),
  nextCueSeconds: seconds.exactOptional(),
  countdownMinutes: z.array(count).exactOptional(),
  countdownPosts: z.boolean().exactOptional(),
  digestTime: z.union([time, z.literal('off')]).exactOptional(),
  publicUrl: z.url({ protocol: /^https?$/ }).exactOptional(),
  reportAt: z.strictObject({ weekday, time }).exactOptional(),
  transitions: numbersLike(defaultSettings.transitions).exactOptional(),
  floors: numbersLike(defaultSettings.floors).exactOptional(),
  dose: numbersLike(defaultSettings.dose).exactOptional(),
  retention: numbersLike(defaultSettings.retention).exactOptional(),
  firstPriority: z.array(z.enum(muscles)).exactOptional(),
  mainLifts: z.enum(['keep', 'vary']).exactOptional(),
  energyOn: z.boolean().exactOptional(),
  ownNames: z.record(z.string(), z.string()).exactOptional(),
});

/** Reads the text of a settings file. */
export function readSettings(text: string): SettingsRead {
  const json = parseJson(text);
  if ('problem' in json) return { kind: 'unusable', problems: [json.problem] };
  const parsed = file.safeParse(json.value);
  if (!parsed.success) return { kind: 'unusable', problems: parsed.error.issues.map(problemOf) };
  const given = parsed.data;
  const settings = withGiven(defaultSettings, given);
  const problems = [...unknownNames(settings), ...repeatedNames(settings)];
  if (problems.length > 0) return { kind: 'unusable', problems };
  return { kind: 'read', settings, given, fingerprint: createHash('sha256').update(text).digest('hex') };
}

function withGiven(base: Settings, given: GivenSettings): Settings {
  const { transitions, floors, dose, retention, ...plain } = given;
  return {
    ...base,
    ...plain,
    transitions: { ...base.transitions, ...transitions },
    floors: { ...base.floors, ...floors },
    dose: { ...base.dose, ...dose },
    retention: { ...base.retention, ...retention },
  };
}

export async function readSettingsFile(path: string): Promise<SettingsRead> {
  try {
    return readSettings(await readFile(path, 'utf8'));
  } catch {
    return { kind: 'unusable', problems: [`the file ${path} can't be read; check EVENSET_SETTINGS`] };
  }
}

/**
 * Saves what the file says where it differs from the file last applied; what it leaves out stays as it was
 * set in the workspace, or at its default. True where it did.
 */
export async function applySettings(
  storage: Storage,
  studioId: StudioId,
  read: SettingsRead & { kind: 'read' },
  now: string,
  log: Log,
): Promise<boolean> {
  const { given, fingerprint } = read;
  const changed = await storage.inTransaction(async ({ settings: store }) => {
    const standing = await store.find(studioId);
    if (standing?.fingerprint === fingerprint) return undefined;
    const before = standing?.settings ?? defaultSettings;
    const settings = withGiven(before, given);
    await store.save(studioId, settings, fingerprint, now);
    return changedNames(before, settings);
  });
  if (changed === undefined) return false;
  log.info('settings applied', { fingerprint: fingerprint.slice(0, 12), changed });
  return true;
}

function parseJson(text: string): { readonly value: unknown } | { readonly problem: string } {
  try {
    const value: unknown = JSON.parse(text);
    return { value };
  } catch (error) {
    const where = error instanceof Error ? /position (\d+)/.exec(error.message)?.[1] : undefined;
    const line = where === undefined ? '' : ` at line ${text.slice(0, Number(where)).split('\n').length}`;
    return { problem: `not JSON${line}: look for a missing comma or quote there` };
  }
}

function problemOf(issue: z.core.$ZodIssue): string {
  const at = issue.path.map((part) => (typeof part === 'number' ? `[${part}]` : `.${String(part)}`)).join('');
  const place = at === '' ? 'the file' : at.replace(/^\./, '');
  if (issue.code === 'unrecognized_keys')
    return `${place}: ${issue.keys.map((key) => `“${key}”`).join(', ')} is no setting here`;
  if (issue.code === 'invalid_value') return `${place}: write one of ${issue.values.map(String).join(', ')}`;
  return `${place}: ${issue.message}`;
}

function unknownNames({ rooms, slots, slotHabits }: Settings): readonly string[] {
  const roomNames = new Set(rooms.map((each) => each.name));
  const slotIds = new Set(slots.map((each) => each.id));
  return [
    ...slots.flatMap(({ room: named }, place) =>
      named === undefined || roomNames.has(named)
        ? []
        : [
            `slots[${place}].room: “${named}” is none of the rooms: ${[...roomNames].join(', ') || 'none are set'}`,
          ],
    ),
    ...slotHabits.flatMap((habit, place) =>
      habit.slotIds.flatMap((id) =>
        slotIds.has(id) ? [] : [`slotHabits[${place}].slotIds: “${id}” is the id of no slot`],
      ),
    ),
  ];
}

function repeatedNames({ rooms, slots }: Settings): readonly string[] {
  const repeated = (names: readonly string[]) => names.filter((each, place) => names.indexOf(each) !== place);
  return [
    ...repeated(rooms.map((each) => each.name)).map((each) => `rooms: “${each}” stands there twice`),
    ...repeated(slots.map((each) => each.id)).map((each) => `slots: the id “${each}” stands there twice`),
  ];
}

function changedNames(before: Settings, after: Settings): readonly string[] {
  const old = new Map<string, unknown>(Object.entries(before));
  return Object.entries(after)
    .filter(([key, value]) => !isDeepStrictEqual(old.get(key), value))
    .map(([key]) => key);
}
