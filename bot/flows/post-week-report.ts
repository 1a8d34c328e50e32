import type { ReportMoment } from '../../domain/calendar/due-notices.ts';
import type { NoticePayload } from '../../domain/ports.ts';
import { toldWeek } from '../../domain/week/told-week.ts';
import { renderCoachWeek } from '../blocks/coach-week-message.ts';
import { codeText } from '../blocks/escape.ts';
import { printWeekCsv } from '../blocks/week-csv.ts';
import { renderWeek, renderWeekAsk, renderWeekDetails } from '../blocks/week-message.ts';
import type { Desk } from '../handling.ts';
import { type WholeWeek, wholeWeekOfStudio } from './week-of-studio.ts';

/** After this long a report says that it comes late. Common practice, no published source. */
const lateMilliseconds = 15 * 60_000;

export function weekAskKey(week: string): string {
  return `week:${week}:ask`;
}

/** The report on a whole week, once a studio and ISO week: for the team with its thread, and for each coach. */
export async function postWeekReport(desk: Desk, moment: ReportMoment): Promise<void> {
  const { stores, studioId, now } = desk;
  const { week, key } = moment;
  const isPosted = (await stores.notices.find(studioId, key)) !== undefined;
  if (isPosted || (await stores.weekReports.find(studioId, week)) !== undefined) return;
  const whole = await wholeWeekOfStudio(desk, week);
  await postToTeam(desk, whole, moment);
  await postToCoaches(desk, whole, key);
  await stores.weekReports.save(studioId, week, toldWeek(whole.report), now);
}

async function postToTeam(desk: Desk, whole: WholeWeek, { key, at }: ReportMoment): Promise<void> {
  const { settings, words, now } = desk;
  if (settings.teamChannel === undefined) return;
  const to = settings.teamChannel;
  const { week } = whole.report;
  const late = Date.parse(now) - Date.parse(at) > lateMilliseconds;
  await post(desk, { key, to, payload: renderWeek(whole, words, { late, key }) });
  const inThread = { to, underKey: key };
  await post(desk, {
    ...inThread,
    key: `${key}:details`,
    payload: renderWeekDetails(whole, settings.dose, words),
  });
  if (whole.report.trust.withPlan > 0)
    await post(desk, { ...inThread, key: `${key}:table`, payload: tablePayload(desk, whole) });
  if (whole.asked.length > 0)
    await post(desk, {
      ...inThread,
      key: weekAskKey(week),
      payload: renderWeekAsk(week, whole.asked, [], words),
    });
}

/** The table as a file; where it can't be posted, the same table as text. */
function tablePayload({ settings, words }: Desk, { report, classes }: WholeWeek): NoticePayload {
  const title = words.week.tableTitle(report.week);
  const content = printWeekCsv(report, classes, settings, words);
  return {
    text: words.week.tableAsText(title, codeText(content)),
    file: { name: `evenset-week-${report.week}.csv`, title, content },
  };
}

async function postToCoaches(desk: Desk, whole: WholeWeek, key: string): Promise<void> {
  const { settings, words } = desk;
  for (const coach of settings.headCoaches)
    await post(desk, {
      key: `${key}:coach:${coach}`,
      to: coach,
      payload: renderCoachWeek(whole, settings, words),
    });
}

async function post(
  { stores, studioId, now }: Desk,
  {
    key,
    to,
    underKey,
    payload,
  }: {
    readonly key: string;
    readonly to: string;
    readonly underKey?: string;
    readonly payload: NoticePayload;
  },
): Promise<void> {
  const thread = underKey === undefined ? {} : { thread: { noticeKey: underKey } };
  await stores.notices.enqueue(studioId, {
    key,
    to,
    action: { kind: 'post', ...thread },
    payload,
    causedAt: now,
  });
}
