import type { Problem } from '../../domain/shorthand/problem.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { planValue } from './draft-card.ts';
import { buttons, sections } from './elements.ts';
import { clip, limits } from './limits.ts';
import { problemsInShort } from './problem-blocks.ts';

/** A button carries its edit; a longer one is said again. */
const mostOfEdit = 1_400;

/** Why an edit can't be made, each edit that is near it as a button. */
export function renderEditProblems(
  open: OpenPlan,
  problems: readonly Problem[],
  near: readonly string[],
  words: Words,
): Message {
  const text = clip(problemsInShort(problems, words).join('\n'), limits.topLevelText);
  const offered = near.filter((edit) => edit.length <= mostOfEdit);
  if (offered.length === 0) return { text };
  return {
    text,
    blocks: [
      ...sections('problems', text.split('\n')),
      ...buttons(
        'near',
        offered.map((edit) => ({
          action: actions.applyEdit,
          label: edit.replaceAll('\n', ', '),
          value: planValue(open, edit),
        })),
      ),
    ],
  };
}
