import { isDeepStrictEqual } from 'node:util';
import type { Settings } from '../../domain/settings.ts';
import { maySet } from '../../domain/who-may.ts';
import { settingsMenu, settingsView } from '../blocks/settings-forms.ts';
import { readSettingsPlace } from '../blocks/settings-place.ts';
import { clashesOfSlots } from '../flows/clashes-of-slots.ts';
import { keepSettings } from '../flows/keep-settings.ts';
import { readSettingsPart } from '../flows/read-settings-part.ts';
import { settingsAsKept } from '../flows/settings-as-kept.ts';
import { groupsAsideText } from '../flows/tell-groups-aside.ts';
import type { ActionRequest, Answer, Desk, GroupsRead, Handler, Reaction, ViewRequest } from '../handling.ts';
import type { Words } from '../words/words.ts';

/** Opens all settings; from inside the form it goes back to them. */
export const onOpenSettings: Handler<ActionRequest> = async ({ personId, triggerId, view, value }, desk) => {
  if (!maySet(desk.settings, personId)) return refused(desk);
  const menu = settingsMenu(desk);
  return {
    answers:
      view !== undefined && value === 'menu'
        ? [{ kind: 'update view', viewId: view.id, view: menu }]
        : [{ kind: 'open view', triggerId, view: menu }],
  };
};

/** One part, in the place of the list it was chosen from. */
export const onSettingsPart: Handler<ActionRequest> = async ({ personId, value, view }, desk) => {
  if (!maySet(desk.settings, personId)) return refused(desk);
  const place = readSettingsPlace(value);
  if (place === undefined || view === undefined)
    return { answers: [{ kind: 'only to you', message: { text: desk.words.flow.buttonGone } }] };
  const show = { ...desk, settings: await settingsAsKept(desk) };
  const shown = (groups?: GroupsRead): Answer => ({
    kind: 'update view',
    viewId: view.id,
    view: settingsView(place, groups === undefined ? show : { ...show, groups }),
  });
  if (place.part !== 'roles') return { answers: [shown()] };
  return { answers: [{ kind: 'read groups', next: (groups) => [shown(groups)] }] };
};

/** Saves one part; what is wrong is said at its field and everything filled in stays. */
export const onSettingsForm: Handler<ViewRequest> = async ({ personId, metadata, values }, desk) => {
  const place = readSettingsPlace(metadata);
  const [first = 'about'] = Object.keys(values);
  if (!maySet(desk.settings, personId)) return wrong({ [first]: desk.words.settings.onlyCoaches });
  if (place === undefined) return wrong({ [first]: desk.words.flow.buttonGone });
  const before = await settingsAsKept(desk);
  const read = readSettingsPart(place, values, before, desk.words);
  if (read.kind === 'wrong') return wrong(read.byBlock);
  const { settings } = read;
  const after = await keepSettings(desk, () => settings);
  const said = [
    desk.words.settings.saved(changedNames(before, settings, desk.words)),
    ...(await clashesOfSlots(after, before.slots)),
  ].join('\n');
  const isList = place.part === 'rooms' || place.part === 'slots';
  const show = { ...after, settings };
  const view = isList ? settingsView({ part: place.part }, show, said) : settingsMenu(show, said);
  const groupsChanged = !isDeepStrictEqual(before.roleGroups, settings.roleGroups);
  return { ack: { kind: 'update', view }, answers: groupsChanged ? [rolesOfGroups(after)] : [] };
};

/** Who has a role by a group is asked once it is set; where nobody can tell, that is said. */
function rolesOfGroups(desk: Desk): Answer {
  return {
    kind: 'read groups',
    next: (read) => {
      const text = groupsAsideText(desk, read);
      return text === undefined ? [] : [{ kind: 'only to you', message: { text } }];
    },
  };
}

/** The names of the settings that are different. */
function changedNames(before: Settings, after: Settings, words: Words): readonly string[] {
  const old = new Map<string, unknown>(Object.entries(before));
  const changed = new Map<string, unknown>(Object.entries(after));
  return Object.entries(words.settings.names).flatMap(([key, name]) =>
    isDeepStrictEqual(old.get(key), changed.get(key)) ? [] : [name],
  );
}

function wrong(byBlock: Readonly<Record<string, string>>): Reaction {
  return { ack: { kind: 'errors', byBlock }, answers: [] };
}

function refused(desk: Desk): Reaction {
  return { answers: [{ kind: 'only to you', message: { text: desk.words.settings.onlyCoaches } }] };
}
