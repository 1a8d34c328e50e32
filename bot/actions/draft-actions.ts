import { redo } from '../flows/change-plan.ts';
import { cardKey } from '../flows/post-draft.ts';
import { startDraft } from '../flows/start-draft.ts';
import { type ActionRequest, type Handler, noReaction } from '../handling.ts';
import { reactionOf, toYou, withPlan } from './with-plan.ts';

/** The example of the help as a draft of one's own; tapped again, where it is. */
export const onTryExample: Handler<ActionRequest> = async ({ personId }, desk) => {
  const { stores, studioId, words } = desk;
  const text = words.help.example;
  const [latest] = await stores.plans.listByAuthor(studioId, personId, 1);
  const version = latest && (await stores.plans.findVersion(studioId, latest.id, latest.currentVersion));
  if (latest !== undefined && version?.text === text)
    return {
      answers: [
        {
          kind: 'link to you',
          noticeKey: cardKey(latest.id),
          message: (link) => ({ text: words.flow.draftIsAt(link) }),
        },
      ],
    };
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
