import type { TeamMoment } from '../../domain/calendar/countdown-for.ts';
import type { ClassFacts } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass, ZonedMoment } from '../../domain/calendar/scheduled-class.ts';
import type { Message } from '../handling.ts';
import type { Words } from '../words/words.ts';
import { context, section, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { clip, limits } from './limits.ts';

/** A class's countdown in the team channel: who, where, what to lay out, the first block. */
export function renderCountdown(facts: ClassFacts, moment: TeamMoment, now: string, words: Words): Message {
  const lead = words.countdown.lead(facts, moment, now, inertText);
  const lines = words.countdown.lines(facts, moment, inertText);
  return {
    text: clip([lead, ...lines].join('\n'), limits.topLevelText),
    blocks: [
      ...sections('class', [`*${lead}*`, ...lines]),
      context('cause', words.countdown.cause(facts.instructorId)),
    ],
  };
}

/** What stands in its place once the class is cancelled. */
export function renderCancelled(facts: ClassFacts, words: Words): Message {
  return oneLine(words.countdown.cancelled(facts, inertText));
}

/** What stands in its place once the class is over, or was not held. */
export function renderOver(
  facts: ClassFacts,
  { state, outcome }: Pick<ScheduledClass, 'state' | 'outcome'>,
  words: Words,
): Message {
  const how =
    state === 'not taught'
      ? 'not taught'
      : facts.coverOpen && outcome === undefined
        ? 'nobody took it'
        : 'over';
  return oneLine(words.countdown.over(facts, how, inertText));
}

/** What stands in its place once the class is at another time; `facts` are those of the old one. */
export function renderMoved(facts: ClassFacts, to: ZonedMoment, words: Words): Message {
  return oneLine(words.countdown.moved(facts, to, inertText));
}

function oneLine(text: string): Message {
  return { text: clip(text, limits.topLevelText), blocks: [section('class', `*${text}*`)] };
}
