import type { ClassMoment } from '../../domain/calendar/countdown-for.ts';
import type { Message } from '../handling.ts';
import type { Words } from '../words/words.ts';
import { context, sections } from './elements.ts';
import { inertText } from './escape.ts';
import { clip, limits } from './limits.ts';

/** A class's countdown in the team channel: who, where, what to lay out, the first block. */
export function renderCountdown(moment: ClassMoment, now: string, words: Words): Message {
  const lead = words.countdown.lead(moment, now, inertText);
  const lines = words.countdown.lines(moment, inertText);
  return {
    text: clip([lead, ...lines].join('\n'), limits.topLevelText),
    blocks: [
      ...sections('class', [`*${lead}*`, ...lines]),
      context('cause', words.countdown.cause(moment.facts.instructorId)),
    ],
  };
}
