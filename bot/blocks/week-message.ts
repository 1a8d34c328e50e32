import type { Block, KnownBlock } from '@slack/types';
import type { NoticePayload } from '../../domain/ports.ts';
import type { DoseSettings } from '../../domain/settings.ts';
import { type Saying, type SayingDecision, sayingOf } from '../../domain/week/sayings.ts';
import { weekChart } from '../../domain/week/week-chart.ts';
import type { WeekReport } from '../../domain/week/week-report.ts';
import type { WholeWeek } from '../flows/week-of-studio.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { printButtonValue } from './button-value.ts';
import { buttons, context, header, section, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { clip, limits } from './limits.ts';
import { drawWeekChart, type NamedBars } from './week-picture.ts';

/** Lines of under-trained muscles on the first screen of a phone; the rest is in the thread. */
const mostLines = 6;

export const mendBlockId = 'do';

/**
 * The first screen: how far to trust the week, what was under-trained and the one edit that mends it, what
 * regulars miss, how it stands to the week before, what went otherwise. `key`: the notice it is posted as.
 */
export function renderWeek(
  { report, comparison, quiet, toCome }: WholeWeek,
  words: Words,
  { late, key }: { readonly late?: boolean; readonly key?: string } = {},
): Message & { readonly blocks: readonly KnownBlock[] } {
  const { week } = words;
  const told = { ...report, underTrained: loudOf(report, quiet) };
  const lines = week.underTrained(told.underTrained, inertText).map((line) => `• ${line}`);
  const more = lines.length - mostLines;
  const worst = week.worstHabit(report, inertText);
  const isBare = report.trust.classes === 0;
  return {
    text: clip(
      `${late === true ? `${week.late} ` : ''}${week.short(told, comparison, toCome, inertText)}`,
      limits.topLevelText,
    ),
    blocks: [
      header('week', week.title(report.week)),
      ...(late === true ? [context('late', week.late)] : []),
      section('trust', week.trust(report.trust, toCome)),
      ...sections(
        'under-trained',
        isBare
          ? []
          : lines.length === 0
            ? [week.nothingUnderTrained(told)]
            : [
                `*${week.underTrainedTitle}*`,
                ...lines.slice(0, mostLines),
                ...(more > 0 ? [week.moreInThread(more)] : []),
              ],
      ),
      ...mendBlocks(report, words, key),
      ...(report.trust.withPlan === 0
        ? []
        : [section('habits', `*${week.regularsTitle}*\n${worst ?? week.habitsUnknown}`)]),
      ...sections('other', [
        isBare ? '' : week.comparison(comparison),
        ...week.exceptions(report.exceptions, inertText),
      ]),
      context(
        'standing',
        `${key === undefined || report.trust.withPlan === 0 ? '' : `${week.threadHint}\n`}_${words.standingLine}_`,
      ),
    ],
  };
}

function loudOf({ underTrained }: WeekReport, quiet: readonly Saying[]): WeekReport['underTrained'] {
  return underTrained.filter((under) => !quiet.includes(sayingOf(under)));
}

function mendBlocks(
  { mend, wish }: WeekReport,
  words: Words,
  key: string | undefined,
): readonly KnownBlock[] {
  if (mend === undefined)
    return wish === undefined
      ? []
      : [section('mend', `*${words.week.mendTitle}*, ${words.week.wish(wish, inertText)}`)];
  const { planId: plan, version, edit } = mend;
  const value = printButtonValue({ plan, version, edit, ...(key === undefined ? {} : { on: key }) });
  return [
    section('mend', `*${words.week.mendTitle}*, ${words.week.mend(mend, inertText)}`),
    ...buttons(mendBlockId, [{ action: actions.applyWeekEdit, label: words.week.mendButton, value }]),
    context('mend-hint', words.week.mendHint),
  ];
}

/** In the thread: the chart with its numbers, from which slot the work came, the other habits, the sources. */
export function renderWeekDetails(
  { report, quiet, toCome }: WholeWeek,
  dose: DoseSettings,
  words: Words,
): NoticePayload & { readonly fallbackBlocks: readonly KnownBlock[] } {
  const { week } = words;
  const { leastSets, ...chart } = weekChart(report, dose);
  const bars = chart.bars.map(({ muscle, sets }) => ({ name: words.catalogue.muscle(muscle), sets }));
  const numbers = week.chartText(bars, leastSets);
  const under = week.underTrained(report.underTrained, inertText);
  const slots = [
    ...report.slots.map((slot) => week.slot(slot, inertText)),
    ...[week.patterns(report) ?? ''].filter((line) => line !== ''),
  ];
  const before = sections('under-trained-all', under.length > mostLines || quiet.length > 0 ? under : []);
  const hasLoad = report.trust.withPlan > 0;
  const after: readonly KnownBlock[] = [
    ...sections('chart-numbers', hasLoad ? [numbers] : []),
    ...sections('slots', slots.length === 0 ? [] : [`*${week.detailsTitle}*`, ...slots]),
    ...sections('other-habits', week.otherHabits(report, inertText)),
    ...sections('quiet', quiet.length === 0 ? [] : [week.quiet(quiet)]),
    ...(hasLoad ? [context('source', week.source)] : []),
  ];
  if (!hasLoad) {
    const text = clip(slots.join('\n') || week.trust(report.trust, toCome), limits.topLevelText);
    return { text, fallbackBlocks: [...before, ...after] };
  }
  const text = clip(`${week.chartTitle}: ${numbers}`, limits.topLevelText);
  return {
    text,
    blocks: [...before, chartBlock(bars, words), ...after],
    fallbackBlocks: [...before, ...after],
    picture: {
      name: `week-${report.week}.png`,
      svg: drawWeekChart(
        { bars, leastSets },
        { title: week.chartTitle, least: week.chartLeast(leastSets), sets: words.sets },
      ),
      altText: week.chartAlt(numbers),
    },
  };
}

/** The workspace's own chart; its numbers stand as text under it. */
function chartBlock(bars: NamedBars, words: Words): Block {
  const points = bars
    .slice(0, limits.chartCategories)
    .map(({ name, sets }) => ({ label: clip(name, limits.chartLabel), value: sets }));
  const block = {
    type: 'data_visualization',
    block_id: 'chart',
    title: clip(words.week.chartTitle, limits.chartTitle),
    chart: {
      type: 'bar',
      series: [{ name: words.week.chartSeries, data: points }],
      axis_config: { categories: points.map(({ label }) => label) },
    },
  } as const;
  return block;
}

/** Asks a head coach about sayings that came three Mondays running; an answer takes its buttons' place. */
export function renderWeekAsk(
  week: string,
  asked: readonly Saying[],
  decisions: readonly SayingDecision[],
  words: Words,
): Message {
  const decided = (saying: Saying) => decisions.find((each) => each.saying === saying && each.week === week);
  const lines = asked.map((saying) => {
    const decision = decided(saying);
    return decision === undefined ? words.week.ask(saying) : words.week.decided(saying, decision.goesOn);
  });
  const blocks = asked.flatMap((saying, place): readonly KnownBlock[] => {
    const value = `${week}|${saying}`;
    return [
      section(`ask-${place + 1}`, lines[place] ?? ''),
      ...(decided(saying) === undefined
        ? buttons(`answer-${place + 1}`, [
            { action: actions.goOnSaying, label: words.week.askGoOn, value },
            { action: actions.stopSaying, label: words.week.askStop, value },
          ])
        : []),
    ];
  });
  return {
    text: `${words.week.askLead} ${lines.join(' ').replaceAll('*', '')}`,
    blocks: [context('ask-lead', words.week.askLead), ...blocks],
  };
}
