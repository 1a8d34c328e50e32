import type { Saying, SayingDecision } from '../../domain/week/sayings.ts';
import { isHeadCoach } from '../../domain/who-may.ts';
import { renderWeekAsk } from '../blocks/week-message.ts';
import type { Desk, Message } from '../handling.ts';
import { weekAskKey } from './post-week-report.ts';
import { sayingsOfWeek } from './sayings-of-week.ts';

/**
 * A coach's answer to *go on saying it?*; the first one counts, and takes the place of its buttons. Comes back
 * with what the person is to be told, where it changed nothing.
 */
export async function decideSaying(
  desk: Desk,
  by: string,
  decision: SayingDecision,
): Promise<Message | undefined> {
  const { stores, studioId, settings, words, now } = desk;
  const { week, saying } = decision;
  if (!isHeadCoach(settings, by)) return { text: words.week.onlyCoachDecides };
  const question = await stores.notices.find(studioId, weekAskKey(week));
  const asked = await askedOf(desk, week);
  if (question === undefined || !asked.includes(saying)) return { text: words.flow.buttonGone };
  const before = (await stores.weekReports.listDecisions(studioId)).find((each) => each.saying === saying);
  if (before !== undefined && before.week >= week) return { text: words.week.decided(saying, before.goesOn) };
  await stores.weekReports.decide(studioId, decision, now);
  await stores.notices.enqueue(studioId, {
    key: `${weekAskKey(week)}:${saying}`,
    to: question.to,
    action: { kind: 'update', of: question.key },
    payload: renderWeekAsk(week, asked, await stores.weekReports.listDecisions(studioId), words),
    causedAt: now,
  });
  return undefined;
}

async function askedOf(desk: Desk, week: string): Promise<readonly Saying[]> {
  const told = await desk.stores.weekReports.find(desk.studioId, week);
  const sayings = (told?.said ?? []).map(({ saying }) => saying);
  return (await sayingsOfWeek(desk, week, sayings)).asked;
}
