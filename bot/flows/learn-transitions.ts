import { instantAfter } from '../../domain/calendar/wall-time.ts';
import { learnFactor } from '../../domain/timing/learn-factor.ts';
import type { Desk } from '../handling.ts';
import { keepSettings } from './keep-settings.ts';

/** Older classes say little of how the studio teaches now. Ours. */
const lookBackSeconds = 28 * 86_400;

/** Moves the studio's factor by one step where its classes since the last move ask for it; the coaches are told. */
export async function learnTransitions(desk: Desk): Promise<Desk> {
  const { stores, studioId, settings, now } = desk;
  const { transitions, factorMove } = settings;
  const earliest = instantAfter(now, -lookBackSeconds);
  const from = factorMove !== undefined && factorMove.at > earliest ? factorMove.at : earliest;
  const classes = await stores.classes.listBetween(studioId, from, now);
  const said = classes.flatMap(({ outcome }) => outcome?.length ?? []);
  const move = learnFactor(said, transitions.factor, now);
  if (move === undefined) return desk;
  const after = await keepSettings(desk, (kept) => ({
    ...kept,
    transitions: { ...kept.transitions, factor: move.to },
    factorMove: move,
  }));
  if (settings.reviewChannel !== undefined)
    await stores.notices.enqueue(studioId, {
      key: `factor:${now}`,
      to: settings.reviewChannel,
      action: { kind: 'post' },
      payload: { text: desk.words.card.factorMoved(move) },
      causedAt: now,
    });
  return after;
}
