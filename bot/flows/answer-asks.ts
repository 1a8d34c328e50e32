import { type ClassReport, reportOnPlan } from '../../domain/class-report.ts';
import { type Limit, optionLimits, optionsSheet } from '../../domain/plan/options-sheet.ts';
import { type SwapWish, swapsFor } from '../../domain/plan/swaps-for.ts';
import { editPlan } from '../../domain/shorthand/edit-plan.ts';
import { optionLines, renderOptions, renderSwaps } from '../blocks/ask-messages.ts';
import type { Desk, Message } from '../handling.ts';
import { contextFor, type OpenPlan } from './open-plan.ts';

/** Easier, harder or without kit: what would stand in each line's place, answered from the plan. */
export async function answerSwaps(desk: Desk, open: OpenPlan, wish: SwapWish): Promise<readonly Message[]> {
  const { plan } = open.version;
  if (plan === undefined || open.report.kind !== 'report') return [{ text: desk.words.flow.fixLinesFirst }];
  const context = await contextFor(desk, open.record.id);
  const found = kitFindings(open.report);
  const isGood = (edit: string): boolean => {
    const { plan: edited } = editPlan(plan, edit, context);
    return edited !== undefined && kitFindings(reportOnPlan(edited, context)) <= found;
  };
  const swaps = swapsFor(plan, wish, context).map(({ to, ...swap }) =>
    to !== undefined && isGood(to.edit) ? { ...swap, to } : swap,
  );
  return renderSwaps(open, wish, swaps, desk);
}

/** Lines for which the room's kit falls short. */
function kitFindings({ findings }: ClassReport): number {
  return findings
    .filter(({ code }) => code === 'kit-short' || code === 'kit-in-use')
    .reduce((lines, finding) => lines + Math.max(1, finding.lines.length), 0);
}

export async function answerOptions(
  desk: Desk,
  open: OpenPlan,
  wanted: readonly Limit[],
): Promise<readonly Message[]> {
  const { plan } = open.version;
  if (plan === undefined || open.report.kind !== 'report') return [{ text: desk.words.flow.fixLinesFirst }];
  const context = await contextFor(desk, open.record.id);
  return renderOptions(wanted, optionsSheet(plan, wanted, context), desk);
}

/** The whole options sheet, limit by limit, to read in one tap. */
export async function optionsSheetLines(desk: Desk, open: OpenPlan): Promise<readonly string[]> {
  const { plan } = open.version;
  if (plan === undefined || open.report.kind !== 'report') return [desk.words.flow.fixLinesFirst];
  const context = await contextFor(desk, open.record.id);
  return optionLimits.flatMap((limit) => [
    `*${desk.words.asks.optionsTitle(limit)}*`,
    ...optionLines(optionsSheet(plan, [limit], context), desk),
  ]);
}
