import type { HomeView, KnownBlock } from '@slack/types';
import type { ZonedMoment } from '../../domain/calendar/scheduled-class.ts';
import type { PlanRecord } from '../../domain/plan/plan-life.ts';
import type { Words } from '../words/words.ts';
import { context, header, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { limits } from './limits.ts';

export type HomeLine = {
  readonly title?: string;
  readonly startsAt?: ZonedMoment;
  readonly record?: PlanRecord;
};

export type HomeFacts = {
  readonly classes: readonly HomeLine[];
  readonly drafts: readonly HomeLine[];
  /** Present for head coaches. */
  readonly waiting?: readonly HomeLine[];
  /** Settings a studio still needs, by name. */
  readonly missing: readonly string[];
};

export function renderHome(facts: HomeFacts, words: Words): HomeView {
  const { home } = words;
  const blocks: readonly KnownBlock[] = [
    ...part('classes', home.classes, facts.classes, home.noClasses, words),
    ...part('drafts', home.drafts, facts.drafts, home.noDrafts, words),
    ...(facts.waiting === undefined
      ? []
      : part('waiting', home.waiting, facts.waiting, home.noneWaiting, words)),
    ...(facts.missing.length === 0
      ? []
      : [
          header('set-up-title', home.setUp),
          ...sections(
            'set-up',
            facts.missing.map((name) => home.settingMissing(name)),
          ),
        ]),
    context('standing', `${home.how}\n_${words.standingLine}_`),
  ];
  return { type: 'home', blocks: blocks.slice(0, limits.viewBlocks) };
}

function part(
  id: string,
  title: string,
  lines: readonly HomeLine[],
  none: string,
  words: Words,
): readonly KnownBlock[] {
  const told = lines.map((line) => lineText(line, words));
  return [header(`${id}-title`, title), ...sections(id, told.length === 0 ? [none] : told).slice(0, 5)];
}

function lineText({ title, startsAt, record }: HomeLine, words: Words): string {
  return [
    startsAt === undefined ? '' : words.when(startsAt),
    `*${inertText(title ?? words.card.untitled)}*`,
    record === undefined
      ? words.home.noPlan
      : `v${record.currentVersion}, ${words.state(record.state, record.approvedVersion)}`,
  ]
    .filter((each) => each !== '')
    .join(' · ');
}
