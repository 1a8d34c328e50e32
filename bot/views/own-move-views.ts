import { z } from 'zod';
import { type KitNeed, kitItems } from '../../domain/catalogue/kit.ts';
import type { OwnMoveFacts } from '../../domain/catalogue/make-own-move.ts';
import { muscles } from '../../domain/catalogue/muscles.ts';
import { keepText } from '../../domain/shorthand/keep-text.ts';
import { maySet } from '../../domain/who-may.ts';
import { toYou, withPlan } from '../actions/with-plan.ts';
import { kitValue, noKit, ownMoveForm } from '../blocks/own-move-form.ts';
import { settingsView } from '../blocks/settings-forms.ts';
import { rewrite } from '../flows/change-plan.ts';
import { addOwnMove, changeOurMove, type OwnMoveOutcome } from '../flows/own-moves.ts';
import { type PlanOfValue, planOfValue } from '../flows/plan-of-value.ts';
import type { ActionRequest, Desk, FormValues, Handler, Reaction, ViewRequest } from '../handling.ts';
import { errorAt, textOf } from './plan-views.ts';

const filled = z.strictObject({
  primeMovers: z.array(z.enum(muscles)).exactOptional(),
  assisting: z.array(z.enum(muscles)).exactOptional(),
  kit: z.array(z.strictObject({ item: z.enum(kitItems), pieces: z.number() })).exactOptional(),
  level: z.union([z.literal(1), z.literal(2), z.literal(3)]).exactOptional(),
  position: z.enum(['standing', 'kneeling', 'seated', 'supine', 'prone', 'side-lying']).exactOptional(),
  sides: z.enum(['both at once', 'alternating by nature', 'one-sided']).exactOptional(),
  effort: z.enum(['reps', 'hold', 'conditioning', 'mobility']).exactOptional(),
  easier: z.string().exactOptional(),
  nicknames: z.array(z.string()).exactOptional(),
  cue: z.string().exactOptional(),
});

/** The form, from the button beside words that no move goes by. */
export const onOpenOwnMove: Handler<ActionRequest> = withPlan(
  async ({ value, triggerId }, _open, { name }, desk) => {
    if (name === undefined) return toYou({ text: desk.words.flow.buttonGone });
    const view = ownMoveForm(value, { name }, desk.catalogue, desk.words);
    return { answers: [{ kind: 'open view', triggerId, view }] };
  },
);

/** A new move; a draft that waits for it is read anew at once. */
export const onOwnMoveForm: Handler<ViewRequest> = async ({ values, metadata, personId }, desk) => {
  const isPrivate = privateTexts(values, desk);
  if (isPrivate !== undefined) return isPrivate;
  const like = desk.catalogue.byId.get(textOf(values, 'like'));
  if (like === undefined) return errorAt('like', desk.words.ownMove.likeWhat(textOf(values, 'name')));
  const facts = factsIn(values);
  if (facts === undefined) return errorAt('name', desk.words.flow.buttonGone);
  const name = textOf(values, 'name').trim();
  const isOfSettings = metadata === '';
  const found = isOfSettings ? undefined : await planOfValue(desk, metadata);
  if (found === undefined && !isOfSettings) return errorAt('name', desk.words.flow.buttonGone);
  const outcome = await addOwnMove(desk, personId, name, like, facts);
  if (outcome.kind === 'kept') return errorAt('name', outcome.text);
  if (found === undefined) return backInSettings(outcome, personId);
  await rereadDraft(outcome.desk, personId, found, name);
  return told(outcome.text);
};

/** Other facts of an own move, or out of use. */
export const onChangeOwnMoveForm: Handler<ViewRequest> = async ({ values, metadata, personId }, desk) => {
  const isPrivate = privateTexts(values, desk);
  if (isPrivate !== undefined) return isPrivate;
  const facts = factsIn(values);
  const own = desk.settings.ownMoves.find(({ id }) => id === metadata);
  if (facts === undefined || own === undefined) return errorAt('standing', desk.words.flow.buttonGone);
  const wasRetired = own.retired === true;
  const retired = textOf(values, 'standing') === 'retired';
  const outcome = await changeOurMove(desk, personId, own.name, {
    facts: { ...facts, nicknames: facts.nicknames ?? [], assisting: facts.assisting ?? [] },
    ...(retired === wasRetired ? {} : { retired }),
  });
  return outcome.kind === 'kept' ? errorAt('standing', outcome.text) : backInSettings(outcome, personId);
};

/** The list of own moves again, with what became of it. */
function backInSettings({ desk, text }: OwnMoveOutcome & { readonly kind: 'done' }, by: string): Reaction {
  if (!maySet(desk.settings, by)) return told(text);
  return { ack: { kind: 'update', view: settingsView({ part: 'own moves' }, desk, text) }, answers: [] };
}

/** Name, nicknames and cue are read by everyone. */
function privateTexts(values: FormValues, { words }: Desk): Reaction | undefined {
  const found = ['name', 'nicknames', 'cue'].find(
    (block) => words.privateWordIn(textOf(values, block)) !== undefined,
  );
  if (found === undefined) return undefined;
  return errorAt(found, words.privacy.inForm(words.privateWordIn(textOf(values, found)) ?? ''));
}

/** The draft with the new name in the place of the words that were not known. */
async function rereadDraft(
  desk: Desk,
  by: string,
  { value, open }: PlanOfValue,
  name: string,
): Promise<void> {
  if (value.at === undefined) return;
  const text = keepText(open.version.text);
  const stands = value.version === open.record.currentVersion;
  const [start, end] = value.at;
  const fixed = stands ? text.slice(0, start) + name + text.slice(end) : open.version.text;
  await rewrite(desk, open, by, fixed, { adds: 'where lines follow' });
}

function factsIn(values: FormValues): OwnMoveFacts | undefined {
  const level = textOf(values, 'level');
  const nicknames = textOf(values, 'nicknames')
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');
  const cue = textOf(values, 'cue').trim();
  const kit = listOf(values, 'kit');
  const read = filled.safeParse({
    ...listed('primeMovers', listOf(values, 'prime')),
    ...listed('assisting', listOf(values, 'assisting')),
    ...(kit.length === 0 ? {} : { kit: kitNeeds(kit) }),
    ...(level === '' ? {} : { level: Number(level) }),
    ...said('position', textOf(values, 'position')),
    ...said('sides', textOf(values, 'sides')),
    ...said('effort', textOf(values, 'effort')),
    ...said('easier', textOf(values, 'easier')),
    ...listed('nicknames', nicknames),
    ...said('cue', cue === '' || cue.endsWith('.') ? cue : `${cue}.`),
  });
  return read.success ? read.data : undefined;
}

function kitNeeds(chosen: readonly string[]): readonly KitNeed[] {
  return chosen
    .filter((value) => value !== noKit)
    .flatMap((value) =>
      kitItems.flatMap((item) =>
        ([1, 2] as const).flatMap((pieces) =>
          kitValue({ item, pieces }) === value ? [{ item, pieces }] : [],
        ),
      ),
    );
}

function listOf(values: FormValues, block: string): readonly string[] {
  const value = values[block];
  return value === undefined || typeof value === 'string' ? [] : value;
}

function said(name: string, value: string): Readonly<Record<string, string>> {
  return value === '' ? {} : { [name]: value };
}

function listed(name: string, values: readonly string[]): Readonly<Record<string, readonly string[]>> {
  return values.length === 0 ? {} : { [name]: values };
}

function told(text: string): Reaction {
  return { ack: { kind: 'close' }, answers: [{ kind: 'only to you', message: { text } }] };
}
