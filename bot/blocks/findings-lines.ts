import type { Finding } from '../../domain/checks/check-plan.ts';
import type { RuleSource } from '../../domain/checks/finding.ts';
import { sourcesOfChecks } from '../../domain/checks/sources-of-checks.ts';
import { labelsByLine } from '../../domain/plan/labels.ts';
import type { LineId } from '../../domain/plan/plan.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { planValue } from './draft-card.ts';
import { type ButtonFacts, buttons, sections } from './elements.ts';
import { inSeveral } from './in-several.ts';
import type { Show } from './show.ts';

/** Every finding with its reason and source. */
export function findingsLines(open: OpenPlan, show: Show): readonly string[] {
  const { report } = open;
  const { words } = show;
  if (report.kind !== 'report') return [words.flow.fixLinesFirst];
  const labels = labelsByLine(report.plan);
  return [
    ...(report.findings.length === 0 ? [words.card.noFindings] : []),
    ...report.findings.flatMap((finding) => findingText(finding, labels, show)),
    ...inOrderLines(report.findings, words),
  ];
}

/** The checks that found nothing, by the source of their rule: published ones first. */
function inOrderLines(findings: readonly Finding[], { asks }: Words): readonly string[] {
  const quiet = sourcesOfChecks.filter(({ code }) => findings.every((finding) => finding.code !== code));
  const sources = [...new Set(quiet.map(({ source }) => source))];
  const [practice, published] = [
    sources.filter((source) => source === 'common practice'),
    sources.filter((source) => source !== 'common practice'),
  ];
  const codesOf = (wanted: RuleSource) =>
    quiet.flatMap(({ code, source }) => (source === wanted ? [code] : []));
  return [
    asks.nothingFoundLead,
    ...[...published, ...practice].map((source) => asks.nothingFound(source, codesOf(source))),
  ];
}

/** A finding with its reason and source, a line each. */
export function findingText(
  finding: Finding,
  labels: ReadonlyMap<LineId, string>,
  { words, catalogue }: Show,
): readonly string[] {
  const { sentence, why } = words.finding(finding, labels, (id) => catalogue.byId.get(id)?.name ?? id);
  return [`*${words.severity(finding.severity)}:* ${sentence}`, `_${why}_`];
}

/** The same in the thread, each mend one tap away on the last of its messages. */
export function renderFindings(open: OpenPlan, show: Show): readonly Message[] {
  const pages = inSeveral('', findingsLines(open, show), show.words);
  return pages.map(({ text }, place) => ({
    text,
    blocks: [
      ...sections('findings', text.split('\n')),
      ...(place === pages.length - 1
        ? buttons('mends', [...mendButtons(open), ...allChecks(open, show)])
        : []),
    ],
  }));
}

/** The view where a finding can be left out. */
function allChecks(open: OpenPlan, { words }: Show): readonly ButtonFacts[] {
  const isFound = open.report.kind === 'report' && open.report.findings.length > 0;
  const label = words.card.buttons.findings;
  return isFound ? [{ action: actions.allFindings, label, value: planValue(open) }] : [];
}

/** One button for each finding that one edit mends. */
export function mendButtons(open: OpenPlan): readonly ButtonFacts[] {
  if (open.report.kind !== 'report') return [];
  return open.report.findings
    .flatMap(({ mend }) =>
      mend === undefined
        ? []
        : [{ action: actions.applyEdit, label: mend.replaceAll('\n', ', '), value: planValue(open, mend) }],
    )
    .slice(0, 10);
}
