import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { planValue } from './draft-card.ts';
import { buttons, section } from './elements.ts';
import { escapeText, inertText } from './escape.ts';

/** A short help with one class to copy that works when sent back. */
export function renderHelp(words: Words): Message {
  const { lead, example } = words.help;
  const after = `${words.help.after}\n${words.asks.help}\n${words.classes.exceptionsHelp}`;
  return {
    text: `${lead}\n${escapeText(example)}\n${after}`,
    blocks: [section('help', `${lead}\n\`\`\`${escapeText(example)}\`\`\`\n${after}`)],
  };
}

/** In a plan's thread: the edits and the asks that work there. */
export function renderThreadHelp({ asks }: Words): Message {
  const text = `${asks.threadHelp}\n${asks.help}`;
  return { text, blocks: [section('help', text)] };
}

/** Words that almost match an edit get the nearest one as a button. */
export function renderNearestEdit(open: OpenPlan, edit: string, words: Words): Message {
  const text = words.flow.nearestEdit(inertText(edit));
  return {
    text,
    blocks: [
      section('nearest', text),
      ...buttons('use', [{ action: actions.applyEdit, label: edit, value: planValue(open, edit) }]),
    ],
  };
}
