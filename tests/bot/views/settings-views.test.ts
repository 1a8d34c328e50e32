import { describe, expect, test } from 'vitest';
import { settingsMenu, settingsView } from '../../../bot/blocks/settings-forms.ts';
import { printSettingsPlace, readSettingsPlace } from '../../../bot/blocks/settings-place.ts';
import { type SettingsPlace, settingsParts } from '../../../bot/flows/settings-part.ts';
import type { Desk, FormValues, GroupsRead, ViewRequest } from '../../../bot/handling.ts';
import { acceptModal } from '../../../bot/local/accepted-blocks.ts';
import { demoPeople, demoSettings } from '../../../bot/local/demo/demo-studio.ts';
import { stateOf } from '../../../bot/local/form-values.ts';
import { readFormValues } from '../../../bot/requests/form-values.ts';
import { onOpenSettings, onSettingsForm, onSettingsPart } from '../../../bot/views/settings-views.ts';
import { defaultSettings, type Settings } from '../../../domain/settings.ts';
import { atBareDesk } from '../../helpers/at-desk.ts';
import { unshownKinds } from '../../helpers/unshown-kinds.ts';

const tomas: string = demoPeople.coach.id;
const mira = demoPeople.instructor.id;

const open = (personId: string, value = 'home') => ({
  kind: 'action' as const,
  actionId: 'open-settings',
  value,
  personId,
  triggerId: 't',
  view: { id: 'V1', metadata: '', values: {} },
});

/** A form as it opens, with some fields filled in otherwise. */
function filled(place: SettingsPlace, desk: Desk, changes: FormValues, personId = tomas): ViewRequest {
  const accepted = acceptModal(settingsView(place, desk));
  if (accepted.kind === 'refused') throw new Error(accepted.messages.join('\n'));
  const standing = readFormValues({ values: JSON.parse(JSON.stringify(stateOf(accepted.value.blocks, {}))) });
  return {
    kind: 'view',
    callbackId: 'settings-form',
    viewId: 'V1',
    metadata: accepted.value.private_metadata ?? '',
    values: { ...standing, ...changes },
    personId,
    triggerId: 't',
  };
}

const savedIn = async (desk: Desk): Promise<Settings> => {
  const stored = await desk.stores.settings.find(desk.studioId);
  if (stored === undefined) throw new Error('No settings.');
  return stored.settings;
};

/** Saves the form with these changes and returns the settings as they are then. */
const save = (place: SettingsPlace, changes: FormValues) =>
  atBareDesk(async (desk) => {
    const { ack } = await onSettingsForm(filled(place, desk, changes), desk);
    return {
      ack,
      settings: await savedIn(desk),
      fingerprint: (await desk.stores.settings.find(desk.studioId))?.fingerprint,
    };
  });

const places: readonly SettingsPlace[] = [
  ...settingsParts.map((part) => ({ part })),
  { part: 'rooms', key: '' },
  { part: 'rooms', key: 'Mill Room' },
  { part: 'slots', key: '' },
  { part: 'slots', key: 'thu-evening' },
  { part: 'own moves', key: '' },
];

describe('every part', () => {
  test.each(places)('$part $key is a modal that the workspace takes and shows', (place) =>
    atBareDesk(async (desk) => {
      for (const settings of [demoSettings, defaultSettings]) {
        const view = settingsView(place, { ...desk, settings });
        expect(acceptModal(view)).toMatchObject({ kind: 'accepted' });
        expect(unshownKinds(view)).toEqual([]);
      }
    }),
  );

  test('and so is the menu, with every part in it', () =>
    atBareDesk(async (desk) => {
      const menu = settingsMenu(desk);
      expect(acceptModal(menu)).toMatchObject({ kind: 'accepted' });
      const text = JSON.stringify(menu);
      expect(settingsParts.filter((part) => !text.includes(desk.words.settings.part(part)))).toEqual([]);
    }));

  const forms = places.filter(
    ({ part, key }) =>
      !['own moves', 'help'].includes(part) &&
      key !== '' &&
      !((part === 'rooms' || part === 'slots') && key === undefined),
  );
  test.each(forms)('$part $key saved as it opens changes nothing', async (place) => {
    const { ack, settings, fingerprint } = await save(place, {});
    expect(settings).toEqual(demoSettings);
    expect(fingerprint).toBe('demo');
    expect(ack).toMatchObject({ kind: 'update' });
    expect(JSON.stringify(ack)).toContain('Nothing was different.');
  });

  test('thresholds carry their source', () =>
    atBareDesk(async (desk) => {
      const text = JSON.stringify(settingsView({ part: 'dose' }, desk));
      expect(text).toContain('Iversen VM');
      expect(JSON.stringify(settingsView({ part: 'times' }, desk))).toContain('Common practice');
    }));

  test('the help tells the workplace limits of noise', () =>
    atBareDesk(async (desk) => {
      const text = JSON.stringify(settingsView({ part: 'help' }, desk));
      for (const said of ['85 dB(A)', '29 CFR 1910.95', '2003/10/EC', '74 min', 'no default'])
        expect(text).toContain(said);
    }));
});

describe('saved', () => {
  test('cues, posts of the countdown and the address', async () => {
    const { settings } = await save(
      { part: 'studio' },
      { nextCue: '15', countdownPosts: 'each', publicUrl: 'https://evenset.example' },
    );
    expect(settings).toEqual({
      ...demoSettings,
      nextCueSeconds: 15,
      countdownPosts: true,
      publicUrl: 'https://evenset.example',
    });
  });

  test('an emergency card speaks of injuries and hearts, of nobody’s', async () => {
    const emergency =
      'Injury or heart attack: call from gate 2. The person’s heart stopped: AED by the door.';
    const { settings } = await save({ part: 'rooms', key: 'Loft' }, { emergency });
    expect(settings.rooms[1]?.emergencyCard).toBe(emergency);
    const { ack } = await save({ part: 'rooms', key: 'Loft' }, { emergency: 'Mind Ana’s knee.' });
    expect(ack).toMatchObject({
      kind: 'errors',
      byBlock: { emergency: expect.stringContaining('Ana’s knee') },
    });
  });

  test('channels and times', async () => {
    const { ack, settings } = await save(
      { part: 'studio' },
      { zone: 'Asia/Kathmandu', teamChannel: 'C0NEW', countdown: '5 45, 10', digestTime: undefined },
    );
    expect(settings).toEqual({
      ...demoSettings,
      zone: 'Asia/Kathmandu',
      teamChannel: 'C0NEW',
      countdownMinutes: [45, 10, 5],
      digestTime: 'off',
    });
    expect(JSON.stringify(ack)).toContain('Saved: time zone, team channel, countdown, evening digest');
  });

  test('a room with kit; renamed, its slots go with it; removed, they stand without', async () => {
    const added = await save(
      { part: 'rooms', key: '' },
      { name: 'Yard', kit: '12 dumbbells\nmat 8', capacity: '9', emergency: 'Call from gate 2.' },
    );
    expect(added.settings.rooms.at(-1)).toEqual({
      name: 'Yard',
      kit: { dumbbell: 12, mat: 8 },
      capacity: 9,
      doorSeconds: 0,
      clearUpSeconds: 0,
      emergencyCard: 'Call from gate 2.',
    });
    const renamed = await save({ part: 'rooms', key: 'Loft' }, { name: 'Attic' });
    expect(renamed.settings.slots.filter(({ room }) => room === 'Attic')).toHaveLength(2);
    expect(renamed.settings.slots.filter(({ room }) => room === 'Loft')).toEqual([]);
    const removed = await save({ part: 'rooms', key: 'Loft' }, { remove: 'remove' });
    expect(removed.settings.rooms.map(({ name }) => name)).toEqual(['Mill Room']);
    expect(removed.settings.slots.filter(({ room }) => room === undefined)).toHaveLength(2);
  });

  test('a slot; removed, habits that lose their last one go', async () => {
    const added = await save(
      { part: 'slots', key: '' },
      { name: 'Late', weekday: 'Fri', time: '20:00', minutes: '30', room: 'Loft', instructor: mira },
    );
    expect(added.settings.slots.at(-1)).toEqual({
      id: 'fri-2000',
      name: 'Late',
      weekday: 'Fri',
      time: '20:00',
      seconds: 1_800,
      room: 'Loft',
      instructorId: mira,
    });
    const removed = await save({ part: 'slots', key: 'tue-early' }, { remove: 'remove' });
    expect(removed.settings.slotHabits).toContainEqual({
      name: 'Tuesday and Saturday',
      slotIds: ['sat-long'],
    });
  });

  test('a slot that clashes with another is kept, and says with what', async () => {
    const saturday = demoSettings.slots.find(({ id }) => id === 'sat-long');
    const sameTime = {
      name: 'Beside it',
      weekday: 'Sat',
      time: saturday?.time ?? '',
      minutes: '45',
      instructor: saturday?.instructorId ?? '',
    };
    const inItsRoom = await save({ part: 'slots', key: '' }, { ...sameTime, room: saturday?.room ?? '' });
    const said = JSON.stringify(inItsRoom.ack);
    expect(said).toContain('Clash: the room is taken by *Saturday Long*, Sat 24 Oct, 10:00.');
    expect(said).toContain('also teaches *Saturday Long*, Sat 24 Oct, 10:00.');
    expect(inItsRoom.settings.slots.map(({ name }) => name)).toContain('Beside it');
    const later = await save({ part: 'slots', key: '' }, { ...sameTime, time: '21:00' });
    expect(JSON.stringify(later.ack)).not.toContain('Clash');
  });

  test('habits and shared kit by name', async () => {
    const habits = await save({ part: 'habits' }, { habits: 'Early birds: early circuit, Sat 10:00' });
    expect(habits.settings.slotHabits).toEqual([{ name: 'Early birds', slotIds: ['tue-early', 'sat-long'] }]);
    const shared = await save({ part: 'shared kit' }, { shared: 'kettlebell 16: Mill Room, Loft' });
    expect(shared.settings.sharedKit).toEqual([
      { item: 'kettlebell', pieces: 16, rooms: ['Mill Room', 'Loft'] },
    ]);
  });

  test('limits, doses, energy, retention', async () => {
    const times = await save({ part: 'times' }, { 'transitions.swapSeconds': '7' });
    expect(times.settings.transitions).toEqual({ ...demoSettings.transitions, swapSeconds: 7 });
    const checks = await save({ part: 'checks' }, { 'checks.floorChangesAMinute.2': '2.5' });
    expect(checks.settings.checks.floorChangesAMinute).toEqual({ 1: 1.25, 2: 2.5, 3: 3 });
    expect(checks.settings.checks.lateStartShareOfBout).toBe(1 / 3);
    const dose = await save({ part: 'dose' }, { energyOn: 'on', firstPriority: ['chest'] });
    expect(dose.settings).toMatchObject({ energyOn: true, firstPriority: ['chest'] });
    const kept = await save({ part: 'retention' }, { 'retention.commentDays': '90' });
    expect(kept.settings.retention.commentDays).toBe(90);
  });
});

describe('a wrong form is told at its field, and nothing is changed', () => {
  test.each<[string, SettingsPlace, FormValues, string]>([
    ['a zone that is none', { part: 'studio' }, { zone: 'Nowhere/Land' }, 'zone'],
    ['one channel for both', { part: 'studio' }, { reviewChannel: 'C0TEAM' }, 'reviewChannel'],
    ['a report at no time of day', { part: 'studio' }, { reportTime: '99:99' }, 'reportTime'],
    ['a digest at no time of day', { part: 'studio' }, { digestTime: 'evening' }, 'digestTime'],
    ['a countdown in words', { part: 'studio' }, { countdown: 'soon' }, 'countdown'],
    ['nobody left to set', { part: 'roles' }, { headCoaches: [], admins: [] }, 'headCoaches'],
    ['a room without a name', { part: 'rooms', key: '' }, { name: ' ' }, 'name'],
    ['a second room of that name', { part: 'rooms', key: '' }, { name: 'Loft' }, 'name'],
    ['kit that is none', { part: 'rooms', key: '' }, { name: 'Yard', kit: 'trampoline 4' }, 'kit'],
    ['a slot without a time', { part: 'slots', key: '' }, { name: 'Late', weekday: 'Fri' }, 'time'],
    ['a habit of unknown slots', { part: 'habits' }, { habits: 'Owls: Midnight' }, 'habits'],
    ['shared kit of unknown rooms', { part: 'shared kit' }, { shared: 'mat 4: Loft, Cellar' }, 'shared'],
    [
      'a share above 1',
      { part: 'checks' },
      { 'checks.unusedShareOfTeachingTime': '10' },
      'checks.unusedShareOfTeachingTime',
    ],
    ['doses out of order', { part: 'dose' }, { 'dose.low': '12' }, 'dose.low'],
    ['a number in words', { part: 'rooms', key: '' }, { name: 'Yard', capacity: 'many' }, 'capacity'],
    ['half a second', { part: 'times' }, { 'transitions.swapSeconds': '2.5' }, 'transitions.swapSeconds'],
    ['less than a day', { part: 'retention' }, { 'retention.planDays': '0' }, 'retention.planDays'],
    ['no class', { part: 'studio' }, { slotMinutes: '0' }, 'slotMinutes'],
    ['an address that is none', { part: 'studio' }, { publicUrl: 'evenset' }, 'publicUrl'],
    ['someone’s knee as a room', { part: 'rooms', key: '' }, { name: 'Ana’s bad knee' }, 'name'],
    ['a habit of the injured', { part: 'habits' }, { habits: 'Injured: Early Circuit' }, 'habits'],
    ['no first priority', { part: 'dose' }, { firstPriority: [] }, 'firstPriority'],
  ])('%s', async (_, place, changes, block) => {
    const { ack, settings } = await save(place, changes);
    expect(ack).toEqual({ kind: 'errors', byBlock: { [block]: expect.stringMatching(/\S/) } });
    expect(settings).toEqual(demoSettings);
  });
});

describe('roles', () => {
  const groups: GroupsRead = {
    kind: 'read',
    groups: [
      { id: 'S0COACH', handle: 'coaches', people: 2 },
      { id: 'S0TRUST', handle: 'seniors', people: 1 },
    ],
    gone: [],
  };

  test('trusted instructors, small edits and user groups; taken away, nothing of them stays', async () => {
    const set = await save(
      { part: 'roles' },
      {
        trustedInstructors: [mira],
        smallEdits: 'keep',
        'roleGroup.headCoaches': 'S0COACH',
        'roleGroup.trustedInstructors': 'S0TRUST',
      },
    );
    expect(set.settings).toEqual({
      ...demoSettings,
      trustedInstructors: [mira],
      smallEditsKeepApproval: true,
      roleGroups: { headCoaches: 'S0COACH', trustedInstructors: 'S0TRUST' },
    });
    expect(JSON.stringify(set.ack)).toContain(
      'Saved: trusted instructors, user groups with a role, small edits keep an approval',
    );
    await atBareDesk(async (desk) => {
      const changes = { trustedInstructors: [], smallEdits: 'review', 'roleGroup.headCoaches': 'none' };
      await onSettingsForm(filled({ part: 'roles' }, desk, changes), desk);
      expect(await savedIn(desk)).toEqual({
        ...demoSettings,
        roleGroups: { trustedInstructors: 'S0TRUST' },
      });
    }, set.settings);
  });

  test('the form offers the groups there are, the one that stands first among them', () =>
    atBareDesk(async (desk) => {
      const settings = { ...demoSettings, roleGroups: { admins: 'S0TRUST' } };
      const view = settingsView({ part: 'roles' }, { ...desk, settings, groups });
      expect(acceptModal(view)).toMatchObject({ kind: 'accepted' });
      expect(view.blocks.find((block) => block.block_id === 'roleGroup.admins')).toMatchObject({
        element: {
          initial_option: { value: 'S0TRUST', text: { text: '@seniors, 1 person' } },
          options: [{ value: 'none' }, { value: 'S0TRUST' }, { value: 'S0COACH' }],
        },
      });
    }));

  test.each([
    ['missing_scope', 'adds the scope usergroups:read'],
    ['plan_upgrade_required', 'plan has no user groups'],
    ['ratelimited', 'could not be read just now (ratelimited)'],
  ])('groups that can’t be read (%s) are told, and what was set stays', (code, said) => {
    const settings = { ...demoSettings, roleGroups: { admins: 'S0TRUST' } };
    return atBareDesk(async (desk) => {
      const unread = { ...desk, settings, groups: { kind: 'not read', code, stays: true } as const };
      const view = settingsView({ part: 'roles' }, unread);
      expect(acceptModal(view)).toMatchObject({ kind: 'accepted' });
      expect(JSON.stringify(view)).toContain(said);
      await onSettingsForm(filled({ part: 'roles' }, desk, { admins: [mira] }), desk);
      expect(await savedIn(desk)).toEqual({ ...settings, admins: [mira] });
    }, settings);
  });

  test('a group that is gone stands in the form as such', () =>
    atBareDesk(async (desk) => {
      const settings = { ...demoSettings, roleGroups: { admins: 'S0GONE' } };
      const view = settingsView({ part: 'roles' }, { ...desk, settings, groups });
      expect(JSON.stringify(view)).toContain('S0GONE, not among the groups any more');
    }));

  test('the form shows the people named alone: saving it gives nobody of a group a role by name', () => {
    const settings = { ...demoSettings, roleGroups: { headCoaches: 'S0COACH' } };
    return atBareDesk(async (desk) => {
      await desk.stores.userGroups.saveMembers(desk.studioId, 'S0COACH', [mira]);
      const inForce = { ...desk, settings: { ...settings, headCoaches: [tomas, mira] } };
      const [answer] = (await onSettingsPart(open(mira, printSettingsPlace({ part: 'roles' })), inForce))
        .answers;
      const shown = answer?.kind === 'read groups' ? answer.next(groups) : [];
      expect(JSON.stringify(shown)).not.toContain(mira);
      const changes = { admins: [tomas], 'roleGroup.headCoaches': 'S0COACH' };
      await onSettingsForm(filled({ part: 'roles' }, { ...desk, settings }, changes, mira), inForce);
      expect(await savedIn(desk)).toEqual({ ...settings, admins: [tomas] });
    }, settings);
  });
});

describe('who may', () => {
  test('an instructor may neither open nor save; forged places are refused', () =>
    atBareDesk(async (desk) => {
      for (const request of [
        await onOpenSettings(open(mira), desk),
        await onSettingsPart(open(mira, '{"part":"roles"}'), desk),
      ])
        expect(request.answers).toEqual([
          { kind: 'only to you', message: { text: desk.words.settings.onlyCoaches } },
        ]);
      const { ack } = await onSettingsForm(
        filled({ part: 'roles' }, desk, { headCoaches: [mira] }, mira),
        desk,
      );
      expect(ack?.kind).toBe('errors');
      expect(await savedIn(desk)).toEqual(demoSettings);
      expect(readSettingsPlace('{"part":"everything"}')).toBeUndefined();
      expect(readSettingsPlace('no json')).toBeUndefined();
      const forged = { ...filled({ part: 'roles' }, desk, {}), metadata: '{"part":"everything"}' };
      expect((await onSettingsForm(forged, desk)).ack?.kind).toBe('errors');
    }));

  test('an admin may, a role taken away counts at the next click, a studio without roles is set up by anyone', () =>
    atBareDesk(async (desk) => {
      const admin = { ...desk, settings: { ...demoSettings, admins: [mira] } };
      expect((await onOpenSettings(open(mira), admin)).answers[0]?.kind).toBe('open view');
      const without = { ...desk, settings: { ...demoSettings, headCoaches: [mira] } };
      expect((await onOpenSettings(open(tomas), without)).answers[0]?.kind).toBe('only to you');
      const fresh = { ...desk, settings: defaultSettings };
      expect((await onOpenSettings(open(mira), fresh)).answers[0]?.kind).toBe('open view');
    }));

  test('from a form the way back replaces it', () =>
    atBareDesk(async (desk) => {
      expect((await onOpenSettings(open(tomas, 'menu'), desk)).answers[0]).toMatchObject({
        kind: 'update view',
      });
      const part = await onSettingsPart(open(tomas, printSettingsPlace({ part: 'times' })), desk);
      expect(part.answers[0]).toMatchObject({ kind: 'update view', viewId: 'V1' });
    }));
});
