import type { Block, KnownBlock } from '@slack/types';
import type { NoticePayload } from '../../domain/ports.ts';
import type { Settings } from '../../domain/settings.ts';
import type { WholeWeek } from '../flows/week-of-studio.ts';
import type { Words } from '../words/words.ts';
import { context, header, section, sections } from './elements.ts';
import { inertText } from './escape.ts';

export type CoachWeek = NoticePayload & {
  readonly blocks: readonly (KnownBlock | Block)[];
  readonly fallbackBlocks: readonly KnownBlock[];
};

/** The coach's own message: numbers in cells, with fixed-width text where tables are refused. */
export function renderCoachWeek(whole: WholeWeek, { checks }: Settings, words: Words): CoachWeek {
  const { report, conflicts, strain, planned, coming, toCome } = whole;
  const { coachWeek } = words;
  const before: readonly KnownBlock[] = [
    header('coach-week', coachWeek.title(report.week)),
    section('coach-trust', words.week.trust(report.trust, toCome)),
  ];
  const told = conflicts.map((conflict) => coachWeek.conflict(conflict, inertText));
  const ahead = sections('coming', [
    `*${coachWeek.comingTitle(coming.week)}*`,
    ...coachWeek.coming(coming, inertText),
  ]);
  const text = coachWeek.short(report.week, words.week.trust(report.trust, toCome));
  // A week of nothing but zeros says nothing more.
  if (report.trust.classes === 0) {
    const blocks = [...before, ...ahead, context('coach-sources', `_${words.standingLine}_`)];
    return { text, blocks, fallbackBlocks: blocks };
  }
  const lead = context('table-lead', coachWeek.tableLead);
  const after: readonly KnownBlock[] = [
    ...sections('conflicts', [
      `*${coachWeek.conflictsTitle}*`,
      ...(told.length === 0 ? [coachWeek.noConflicts(checks.recoverySets)] : told),
    ]),
    section(
      'strain',
      `*${coachWeek.strainTitle}*\n${strain === undefined ? coachWeek.noStrain : coachWeek.strain(strain)}`,
    ),
    section('planned', `*${coachWeek.plannedTitle}*\n${coachWeek.planned(planned, inertText)}`),
    ...ahead,
    context(
      'coach-sources',
      `${coachWeek.conflictsSource} ${coachWeek.strainSource}\n_${words.standingLine}_`,
    ),
  ];
  const rows = tableRows(whole, words);
  return {
    text,
    blocks: [...before, lead, tableBlock(rows), ...after],
    fallbackBlocks: [...before, lead, ...fixedWidth(rows), ...after],
  };
}

/** Sets, days and minutes a muscle, then the sets of four weeks. */
function tableRows({ report, trend }: WholeWeek, { coachWeek }: Words): readonly (readonly string[])[] {
  const head = [...coachWeek.columns, ...trend.weeks.map(coachWeek.weekColumn)];
  const rows = report.muscles.map((row) => [
    ...coachWeek.cells(row),
    ...(trend.setsByMuscle.get(row.muscle) ?? []).map(coachWeek.trendCell),
  ]);
  return [head, ...rows];
}

function tableBlock(rows: readonly (readonly string[])[]): Block {
  const block = {
    type: 'table',
    block_id: 'muscles',
    rows: rows.map((row) => row.map((text) => ({ type: 'raw_text', text }))),
    column_settings: (rows[0] ?? []).map((_, column) => ({ align: column === 0 ? 'left' : 'right' })),
  } as const;
  return block;
}

/** Two narrow tables, since a phone shows about thirty characters a line. */
function fixedWidth(rows: readonly (readonly string[])[]): readonly KnownBlock[] {
  const now = rows.map(([name = '', sets = '', days = '', minutes = '']) => [name, sets, days, minutes]);
  const trend = rows.map(([name = '', , , , ...weeks]) => [name, ...weeks]);
  return [now, trend].map((part, place) => section(`muscles-${place + 1}`, codeOf(part)));
}

function codeOf(rows: readonly (readonly string[])[]): string {
  const lines = rows.map(([name = '', ...cells]) =>
    [name.padEnd(13), ...cells.map((cell) => cell.padStart(4))].join(' ').trimEnd(),
  );
  return `\`\`\`\n${lines.join('\n')}\n\`\`\``;
}
