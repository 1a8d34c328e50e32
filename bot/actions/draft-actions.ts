import { redo } from '../flows/change-plan.ts';
import { startDraft } from '../flows/start-draft.ts';
import { type ActionRequest, type Handler, noReaction } from '../handling.ts';
import { reactionOf, toYou, withPlan } from './with-plan.ts';

/** The example of the help as a draft of one's own, once. */
export const onTryExample: Handler<ActionRequest> = async ({ personId }, desk) => {
  const { stores, studioId, words } = desk;
  const text = words.help.example;
  const [latest] = await stores.plans.listByAuthor(studioId, personId, 1);
  const version = latest && (await stores.plans.findVersion(studioId, latest.id, latest.currentVersion));
  if (version?.text === text) return toYou({ text: words.help.triedAlready });
  await startDraft(desk, { personId, text });
  return noReaction;
};

/** Makes again what the undo it stands under took back; nothing once the plan has gone on. */
export const onRedo: Handler<ActionRequest> = withPlan(async ({ personId }, open, { version }, desk) => {
  const { currentVersion } = open.record;
  if (version !== currentVersion)
    return toYou({ text: desk.words.flow.madeOnEarlierVersion(currentVersion) });
  return reactionOf(await redo(desk, open, personId));
});
