import { hasLetters } from '../../domain/plan/blocks-of.ts';
import { type LabelledLetter, labelledLetters, labelsByLine } from '../../domain/plan/labels.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import type { PlanComment } from '../../domain/plan/plan-life.ts';
import { printMove } from '../../domain/shorthand/print-letter.ts';
import { printBlockLine, printMoveLine } from '../../domain/shorthand/print-plan.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import { printButtonValue } from './button-value.ts';
import { buttons, context, sections } from './elements.ts';
import { inertText } from './escape.ts';
import type { Choice, ChoiceGroup } from './form-parts.ts';
import { clip, limits } from './limits.ts';
import type { Show } from './show.ts';

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
    inertText(comment.text),
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
    show.words.coach.commented(by, whereOf({ by, text, ...rest }, plan, show), inertText(text)),
  );
}

/** So many moves a list can hold within one view; of a class with more its letters are offered. */
const mostMoves = 1_000;

/** What of a plan can be commented, by line id, in groups of a block or a part of it. */
export function moveChoices(plan: Plan, { catalogue }: Show): readonly ChoiceGroup[] {
  const letters = labelledLetters(plan);
  const isLong = letters.flatMap(({ moves }) => moves).length > mostMoves;
  const choicesOf = ({ label, letter, moves }: LabelledLetter): readonly LabelledChoice[] =>
    isLong
      ? [{ label, choice: { value: letter.id, label: `${label} ${printMoveLine(letter, catalogue)}` } }]
      : moves.map((each) => ({
          label: each.label,
          choice: { value: each.move.id, label: `${each.label} ${printMove(each.move, catalogue)}` },
        }));
  return plan.blocks.filter(hasLetters).flatMap((block) => {
    const choices = letters.filter((each) => each.block === block).flatMap(choicesOf);
    return inParts(choices, limits.selectOptions).map((part) => ({
      label: [...new Set([part[0]?.label, part.at(-1)?.label])]
        .join('–')
        .concat(' · ', printBlockLine(block)),
      choices: part.map(({ choice }) => choice),
    }));
  });
}

type LabelledChoice = { readonly label: string; readonly choice: Choice };

function inParts<Item>(items: readonly Item[], most: number): readonly (readonly Item[])[] {
  return Array.from({ length: Math.ceil(items.length / most) }, (_, place) =>
    items.slice(place * most, (place + 1) * most),
  );
}
