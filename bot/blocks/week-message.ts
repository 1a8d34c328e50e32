import type { Block, KnownBlock } from '@slack/types';
import type { DoseSettings } from '../../domain/settings.ts';
import { type WeekChart, weekChart } from '../../domain/week/week-chart.ts';
import type { WeekReport } from '../../domain/week/week-report.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { printButtonValue } from './button-value.ts';
import { buttons, context, header, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { clip, limits } from './limits.ts';

export type WeekMessage = Message & { readonly fallbackBlocks: readonly KnownBlock[] };

/** The week's report: how far to trust it, what was under-trained, one thing to do, a chart with its numbers. */
export function renderWeek(report: WeekReport, dose: DoseSettings, words: Words): WeekMessage {
  const { week } = words;
  const chart = weekChart(report, dose);
  const under = report.underTrained.map((each) => `• ${week.underTrained(each, inertText)}`);
  const before: readonly KnownBlock[] = [
    header('week', week.title(report.week)),
    ...sections('trust', [week.trust(report.trust)]),
    ...sections(
      'under-trained',
      under.length === 0 ? [week.nothingUnderTrained(report)] : [`*${week.underTrainedTitle}*`, ...under],
    ),
    ...(report.mend === undefined
      ? []
      : [
          ...sections('mend', [`*${week.mend(report.mend, inertText)}*`]),
          ...buttons('do', [
            {
              action: actions.applyEdit,
              label: week.mendButton,
              value: printButtonValue({
                plan: report.mend.planId,
                version: report.mend.version,
                edit: report.mend.edit,
              }),
            },
          ]),
        ]),
    ...sections('habits', week.habits(report, inertText)),
    ...sections(
      'slots',
      report.slots.map((slot) => week.slot(slot, inertText)),
    ),
  ];
  const after: readonly KnownBlock[] = [
    ...sections('chart-numbers', [week.chartText(chart.bars, chart.leastSets)]),
    context('standing', `${week.source}\n_${words.standingLine}_`),
  ];
  return {
    text: clip(week.short(report, inertText), limits.topLevelText),
    blocks:
      report.trust.withPlan === 0 ? [...before, ...after] : [...before, chartBlock(chart, words), ...after],
    fallbackBlocks: [...before, ...after],
  };
}

/** The workspace's own chart; its numbers stand as text under it. */
function chartBlock({ bars }: WeekChart, words: Words): Block {
  const points = bars
    .slice(0, limits.chartCategories)
    .map(({ muscle, sets }) => ({ label: clip(muscle, limits.chartLabel), value: sets }));
  const block = {
    type: 'data_visualization',
    block_id: 'chart',
    title: clip(words.week.chartTitle, limits.chartTitle),
    chart: {
      type: 'bar',
      series: [{ name: 'sets', data: points }],
      axis_config: { categories: points.map(({ label }) => label) },
    },
  } as const;
  return block;
}
