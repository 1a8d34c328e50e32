import { isDeepStrictEqual } from 'node:util';
import type { Settings } from '../../domain/settings.ts';
import { maySet } from '../../domain/who-may-set.ts';
import { settingsMenu, settingsView } from '../blocks/settings-forms.ts';
import { readSettingsPlace } from '../blocks/settings-place.ts';
import { keepSettings } from '../flows/keep-settings.ts';
import { readSettingsPart } from '../flows/read-settings-part.ts';
import type { ActionRequest, Desk, Handler, Reaction, ViewRequest } from '../handling.ts';
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
  return { answers: [{ kind: 'update view', viewId: view.id, view: settingsView(place, desk) }] };
};

/** Saves one part; what is wrong is said at its field and everything filled in stays. */
export const onSettingsForm: Handler<ViewRequest> = async ({ personId, metadata, values }, desk) => {
  const place = readSettingsPlace(metadata);
  const [first = 'about'] = Object.keys(values);
  if (!maySet(desk.settings, personId)) return wrong({ [first]: desk.words.settings.onlyCoaches });
  if (place === undefined) return wrong({ [first]: desk.words.flow.buttonGone });
  const read = readSettingsPart(place, values, desk.settings, desk.words);
  if (read.kind === 'wrong') return wrong(read.byBlock);
  const after = await keepSettings(desk, read.settings);
  const said = desk.words.settings.saved(changedNames(desk.settings, read.settings, desk.words));
  const isList = place.part === 'rooms' || place.part === 'slots';
  const view = isList ? settingsView({ part: place.part }, after, said) : settingsMenu(after, said);
  return { ack: { kind: 'update', view }, answers: [] };
};

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
