import type { PlanId } from '../../domain/calendar/scheduled-class.ts';
import { wallTimeOf } from '../../domain/calendar/wall-time.ts';
import type { Plan, WallTime } from '../../domain/plan/plan.ts';
import type { Home } from '../../domain/plan/plan-life.ts';
import { withOpenLines } from '../../domain/plan/with-open-lines.ts';
import type { PlanVersion } from '../../domain/ports.ts';
import { keepText } from '../../domain/shorthand/keep-text.ts';
import { printPlan } from '../../domain/shorthand/print-plan.ts';
import { readPlan } from '../../domain/shorthand/read-plan.ts';
import { renderAgain } from '../blocks/again-message.ts';
import { inertText } from '../blocks/escape.ts';
import { clip } from '../blocks/limits.ts';
import type { Desk, Message } from '../handling.ts';
import { contextFor, type OpenPlan } from './open-plan.ts';
import { postInThread } from './post-draft.ts';
import { standingVersion } from './standing-version.ts';
import { startDraft } from './start-draft.ts';

/** `again Row & Squat`, `again Row & Squat open`: what is behind the word, empty for the word alone. */
export type AgainRequest = { readonly said: string; readonly isOpen: boolean };

export function readAgain(text: string): AgainRequest | undefined {
  const [all, said = '', open] = /^again(?:\s+(\S[^\n]*?)(\s+open)?)?\s*$/i.exec(keepText(text).trim()) ?? [];
  return all === undefined ? undefined : { said, isOpen: open !== undefined };
}

export type StartedAgain =
  | { readonly kind: 'started'; readonly open: OpenPlan }
  | { readonly kind: 'not found'; readonly message: Message };

/**
 * A new draft from an earlier class of that title, one's own before others': its structure and moves, or its
 * structure with open lines. A day and time behind the title are the new class's.
 */
export async function startAgain(
  desk: Desk,
  personId: string,
  { said, isOpen }: AgainRequest,
  home?: Home,
): Promise<StartedAgain> {
  // A title line is read where a block stands under it.
  const facts = readPlan(`${said}\nwarm-up 5:00`, await contextFor(desk)).plan?.facts;
  const candidates = await earlierClasses(desk, personId);
  const source = said === '' ? undefined : bestMatch(candidates, facts?.title ?? said);
  if (source?.plan === undefined)
    return { kind: 'not found', message: notFound(desk, { said, isOpen }, candidates) };
  const startsAt = facts?.startsAt;
  const open = await startFrom(
    desk,
    personId,
    { source, plan: source.plan, isOpen, ...(startsAt === undefined ? {} : { startsAt }) },
    home,
  );
  return { kind: 'started', open };
}

/** The same from a class that was chosen by its button; undefined where it is none of those there are. */
export async function startAgainFrom(
  desk: Desk,
  personId: string,
  planId: PlanId,
  isOpen: boolean,
): Promise<OpenPlan | undefined> {
  const source = (await earlierClasses(desk, personId)).find((each) => each.planId === planId);
  return source?.plan && startFrom(desk, personId, { source, plan: source.plan, isOpen });
}

async function startFrom(
  desk: Desk,
  personId: string,
  from: {
    readonly source: PlanVersion;
    readonly plan: Plan;
    readonly isOpen: boolean;
    readonly startsAt?: WallTime;
  },
  home?: Home,
): Promise<OpenPlan> {
  const { source, plan, isOpen, startsAt } = from;
  const { startsAt: _, ...kept } = plan.facts;
  const again: Plan = { ...plan, facts: { ...kept, ...(startsAt === undefined ? {} : { startsAt }) } };
  const text = printPlan(isOpen ? withOpenLines(again, desk.catalogue) : again, desk.catalogue);
  const open = await startDraft(desk, { personId, text, ...(home === undefined ? {} : { home }) });
  const told = desk.words.flow.startedFrom(
    titleText(source),
    source.version,
    wallTimeOf(source.madeAt, desk.settings.zone),
  );
  await postInThread(desk, open, `again:${open.record.id}`, { text: told });
  return open;
}

const mostOwn = 100;
const lookBackMilliseconds = 365 * 86_400_000;

/** Plans with a title that could be read, the newest first: one's own, then those of the studio's classes. */
async function earlierClasses(desk: Desk, personId: string): Promise<readonly PlanVersion[]> {
  const { stores, studioId } = desk;
  const own = await stores.plans.listByAuthor(studioId, personId, mostOwn);
  const from = new Date(Date.parse(desk.now) - lookBackMilliseconds).toISOString();
  const classes = await stores.classes.listBetween(studioId, from, desk.now);
  const ids = [...own.map(({ id }) => id), ...classes.toReversed().flatMap(({ planId }) => planId ?? [])];
  const found: PlanVersion[] = [];
  for (const planId of new Set(ids)) {
    const version = await standingVersion(desk, { planId });
    if (version?.plan?.facts.title !== undefined && version.problemCount === 0) found.push(version);
  }
  return found;
}

function bestMatch(versions: readonly PlanVersion[], wanted: string): PlanVersion | undefined {
  const plain = (text: string | undefined) =>
    (text ?? '')
      .toLowerCase()
      .replaceAll(/(?<!\p{L})and(?!\p{L})|[^\p{L}\p{N}]+/gu, ' ')
      .replaceAll(/ +/g, ' ')
      .trim();
  const name = plain(wanted);
  const by = (fits: (title: string) => boolean) =>
    versions.find(({ plan }) => fits(plain(plan?.facts.title)));
  return by((title) => title === name) ?? by((title) => title.startsWith(name) && name !== '');
}

const mostNamed = 5;
const mostOfTitle = 60;

/** Those there are, each with its button. */
function notFound(desk: Desk, { said, isOpen }: AgainRequest, versions: readonly PlanVersion[]): Message {
  const titles = new Map<string, PlanVersion>();
  for (const version of versions)
    if (!titles.has(titleText(version))) titles.set(titleText(version), version);
  const offered = [...titles].slice(0, mostNamed);
  return renderAgain(
    desk.words.flow.noClassAgain(
      inertText(clip(said, mostOfTitle)),
      offered.map(([title]) => title),
    ),
    offered.map(([, { planId, version, plan }]) => ({
      planId,
      version,
      title: plan?.facts.title ?? '',
      isOpen,
    })),
  );
}

function titleText({ plan }: PlanVersion): string {
  return inertText(clip(plan?.facts.title ?? '', mostOfTitle));
}
