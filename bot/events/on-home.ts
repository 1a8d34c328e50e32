import { renderHome } from '../blocks/home-view.ts';
import { tellFirstRun } from '../flows/data-of-person.ts';
import { homeOf } from '../flows/home-of.ts';
import { type Handler, type HomeRequest, noReaction } from '../handling.ts';

/** A person's home, as it stands each time they open it; at the first look what is kept of them is said. */
export const onHome: Handler<HomeRequest> = async ({ personId, messages }, desk) => {
  await tellFirstRun(desk, personId);
  if (messages) return noReaction;
  const view = renderHome(await homeOf(desk, personId), desk.words);
  return { answers: [{ kind: 'publish home', personId, view }] };
};
