import { renderHome } from '../blocks/home-view.ts';
import { homeOf } from '../flows/home-of.ts';
import type { Handler, HomeRequest } from '../handling.ts';

/** A person's home, as it stands each time they open it. */
export const onHome: Handler<HomeRequest> = async ({ personId }, desk) => ({
  answers: [{ kind: 'publish home', personId, view: renderHome(await homeOf(desk, personId), desk.words) }],
});
