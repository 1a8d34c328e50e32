import type { KnownBlock, ModalView } from '@slack/types';
import { labelsByLine } from '../../domain/plan/labels.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import { actions } from '../ids.ts';
import { printButtonValue } from './button-value.ts';
import { titleOf } from './draft-card.ts';
import { button, buttons, section } from './elements.ts';
import { findingsLines, findingText, mendButtons } from './findings-lines.ts';
import { readingView } from './forms.ts';
import { clip, limits } from './limits.ts';
import type { Show } from './show.ts';

/** Findings in one view; of each code one can be left out, so that more than these are not met. */
const mostFindings = 60;

/**
 * All checks with their reasons; each mend is a button, what need not be fixed can be left out, and the view
 * follows what it changes.
 */
export function findingsView(open: OpenPlan, show: Show): ModalView {
  const { words } = show;
  const { report } = open;
  const lead = `*${titleOf(open.version.plan, words)}* · ${words.card.version(open.record.currentVersion)}`;
  const title = words.card.buttons.findings;
  if (report.kind !== 'report' || report.findings.length === 0)
    return readingView(title, [lead, ...findingsLines(open, show)], words);
  const labels = labelsByLine(report.plan);
  const shown = report.findings.slice(0, mostFindings).map((finding, place): KnownBlock => {
    const text = clip(findingText(finding, labels, show).join('\n'), limits.section);
    const told = section(`finding-${place + 1}`, text);
    const { id, currentVersion } = open.record;
    const value = printButtonValue({ plan: id, version: currentVersion, name: finding.code });
    return finding.severity === 'must fix'
      ? told
      : {
          ...told,
          accessory: button({ action: actions.openDismiss, label: words.dismiss.button, value }, place + 1),
        };
  });
  const view = readingView(title, [lead], words);
  return { ...view, blocks: [...view.blocks, ...shown, ...buttons('mends', mendButtons(open))] };
}
