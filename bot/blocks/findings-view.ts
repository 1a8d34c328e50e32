import type { ModalView } from '@slack/types';
import type { OpenPlan } from '../flows/open-plan.ts';
import { type Show, titleOf } from './draft-card.ts';
import { buttons } from './elements.ts';
import { findingsLines, mendButtons } from './findings-lines.ts';
import { readingView } from './forms.ts';

/** All checks with their reasons; each mend is a button, and the view follows what it changes. */
export function findingsView(open: OpenPlan, show: Show): ModalView {
  const { words } = show;
  const lines = [
    `*${titleOf(open.version.plan, words)}* · ${words.card.version(open.record.currentVersion)}`,
    ...findingsLines(open, show),
  ];
  const view = readingView(words.card.buttons.findings, lines, words);
  return { ...view, blocks: [...view.blocks, ...buttons('mends', mendButtons(open))] };
}
