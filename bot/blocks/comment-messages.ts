import { labelledLetters, labelsByLine } from '../../domain/plan/labels.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import type { PlanComment } from '../../domain/plan/plan-life.ts';
import { printMove } from '../../domain/shorthand/print-letter.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import { printButtonValue } from './button-value.ts';
import type { Show } from './draft-card.ts';
import { buttons, context, sections } from './elements.ts';
import { escapeText, inertText } from './escape.ts';
import { clip, limits } from './limits.ts';

/** What of a move's line stands with a comment on it. */
const mostOfMove = 150;

/** `B1 goblet squat`, by the letters of the plan as it stands. */
function whereOf(comment: PlanComment, plan: Plan | undefined, { words, catalogue }: Show): string {
  const label = plan && labelsByLine(plan).get(comment.line);
  if (plan === undefined || label === undefined) return words.coach.commentGone;
  const move = labelledLetters(plan)
    .flatMap(({ moves }) => moves)
    .find((each) => each.move.id === comment.line);
  return [
    label,
    ...(move === undefined ? [] : [clip(inertText(printMove(move.move, catalogue)), mostOfMove)]),
  ].join(' ');
}

/** A comment on one move, open with its button or resolved without. */
export function renderComment(open: OpenPlan, comment: PlanComment, show: Show): Message {
  const { coach } = show.words;
  const line = coach.commented(
    comment.by,
    whereOf(comment, open.version.plan, show),
    escapeText(comment.text),
  );
  const text = clip(line, limits.topLevelText);
  const value = printButtonValue({ plan: comment.planId, version: comment.version, comment: comment.id });
  const after =
    comment.resolved === undefined
      ? buttons('resolve', [{ action: actions.resolveComment, label: coach.resolveButton, value }])
      : [context('resolved', coach.resolved(comment.resolved.by))];
  return { text, blocks: [...sections('comment', text.split('\n')), ...after] };
}

/** Open comments in short, for the review. */
export function commentLines(
  comments: readonly PlanComment[],
  plan: Plan | undefined,
  show: Show,
): readonly string[] {
  return comments.map(({ by, text, ...rest }) =>
    show.words.coach.commented(by, whereOf({ by, text, ...rest }, plan, show), escapeText(text)),
  );
}

/** The moves of a plan to choose from: by line id, with label and name. */
export function moveChoices(
  plan: Plan,
  { catalogue }: Show,
): readonly { readonly line: string; readonly text: string }[] {
  return labelledLetters(plan)
    .flatMap(({ moves }) => moves)
    .map(({ label, move }) => ({ line: move.id, text: `${label} ${printMove(move, catalogue)}` }));
}
