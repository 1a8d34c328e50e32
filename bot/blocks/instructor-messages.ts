import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { LateStartCut } from '../../domain/timing/fit.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { printClassValue } from './class-value.ts';
import { buttons, section, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { clip, limits } from './limits.ts';

/** Asks the instructor, shortly before, whether they are in. */
export function renderAreYouIn(scheduled: ScheduledClass, minutes: number, words: Words): Message {
  const text = words.classes.askIn(scheduled, minutes, scheduled.room, inertText);
  const value = printClassValue(scheduled);
  return {
    text,
    blocks: [
      section('ask', text),
      ...buttons('answer', [
        { action: actions.imIn, label: words.classes.inButton, value, style: 'primary' },
        { action: actions.cannotTeach, label: words.classes.cannotButton, value },
      ]),
    ],
  };
}

/** What stands in its place once it is answered, or is not theirs to answer. */
export function renderAnswered(text: string): Message {
  return { text, blocks: [section('ask', text)] };
}

/** How the plan begins, and what to cut where the class starts late; for the instructor alone. */
export function renderFirstLines(
  scheduled: ScheduledClass,
  minutes: number,
  lines: readonly string[],
  cuts: readonly LateStartCut[],
  words: Words,
): Message {
  const lead = words.classes.firstLines(scheduled, minutes, inertText);
  const shown = [...lines.map(inertText), ...cuts.map((cut) => inertText(words.classes.lateCut(cut)))];
  return {
    text: clip([lead, ...shown].join('\n'), limits.topLevelText),
    blocks: sections('first', [lead, ...shown]),
  };
}
