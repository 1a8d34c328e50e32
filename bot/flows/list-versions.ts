import { inZone } from '../../domain/calendar/wall-time.ts';
import { inertText } from '../blocks/escape.ts';
import { inSeveral } from '../blocks/in-several.ts';
import type { Desk, Message } from '../handling.ts';
import type { OpenPlan } from './open-plan.ts';

/** Every version of a plan with how it came about, when, and by whom where it was not its author. */
export async function listVersions(desk: Desk, { record }: OpenPlan): Promise<readonly Message[]> {
  const { words } = desk;
  const versions = await desk.stores.plans.listVersions(desk.studioId, record.id);
  const lines = versions.map((version) =>
    [
      inertText(words.flow.versionLine(version)),
      whenMade(desk, version.madeAt),
      ...(version.madeBy === record.authorId ? [] : [words.person(version.madeBy)]),
    ].join(' · '),
  );
  return inSeveral('', lines, words);
}

/** `today 09:00` in the studio's zone. */
function whenMade({ settings, words, now }: Desk, madeAt: string): string {
  const made = inZone(madeAt, settings.zone);
  const days = inZone(now, settings.zone).startOf('day').diff(made.startOf('day'), 'days').days;
  const time = made.toFormat('HH:mm');
  if (days === 0) return `${words.draft.today} ${time}`;
  if (days === 1) return `${words.draft.yesterday} ${time}`;
  return words.when({ date: made.toFormat('yyyy-MM-dd'), time });
}
