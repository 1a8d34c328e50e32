import type { ClassFacts } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { houseClassNames } from '../../domain/plan/house-classes.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { changeButton } from './change-button.ts';
import { printClassValue } from './class-value.ts';
import { buttons, section, sections } from './elements.ts';
import { codeText, inertText } from './escape.ts';
import { clip, limits } from './limits.ts';

/** A class offered to the team; the first tap takes it. */
export function renderOffer(scheduled: ScheduledClass, facts: ClassFacts, words: Words): Message {
  const lines = words.classes.coverOffer(facts, inertText);
  return {
    text: lines.join('\n'),
    blocks: [
      ...sections('offer', lines),
      ...buttons('take', [
        {
          action: actions.takeClass,
          label: words.classes.takeButton,
          value: printClassValue(scheduled),
          style: 'primary',
        },
      ]),
    ],
  };
}

/** Before a class is offered to all: which, and what will be said of it. */
export function renderOfferAsk(
  classes: readonly ScheduledClass[],
  teamChannel: string,
  words: Words,
): Message {
  const [only, ...others] = classes;
  const text =
    only === undefined || others.length > 0
      ? words.classes.offerAskWhich(teamChannel)
      : words.classes.offerAsk(only, teamChannel, only.instructorId, inertText);
  const label = (one: ScheduledClass) =>
    others.length === 0
      ? words.classes.offerButton
      : `${words.when(one.startsAt)} ${one.title ?? words.classes.untitled}`;
  return {
    text,
    blocks: [
      section('ask', text),
      ...buttons(
        'offer',
        classes.map((one) => ({
          action: actions.cannotTeach,
          label: label(one),
          value: printClassValue(one),
        })),
      ),
    ],
  };
}

/** A class is offered; as long as nobody took it, it can be taken back. */
export function renderOffered(scheduled: ScheduledClass, words: Words): Message {
  const text = words.classes.coverAsked(scheduled, inertText);
  return {
    text,
    blocks: [
      section('offered', text),
      ...buttons('back', [
        {
          action: actions.takeBackOffer,
          label: words.classes.takeBackButton,
          value: printClassValue(scheduled),
        },
      ]),
    ],
  };
}

/** What stands in the offer's place afterwards. */
export function renderTaken(text: string): Message {
  return { text, blocks: [section('offer', text)] };
}

/** Everything for whoever takes a class: where, for how many, what to lay out, the plan as text. */
export function renderHandOver(
  scheduled: ScheduledClass,
  facts: ClassFacts,
  planText: string | undefined,
  words: Words,
): Message {
  const lines = [
    words.classes.youTeach(scheduled, inertText),
    [
      ...(facts.room === undefined ? [] : [inertText(facts.room)]),
      ...(facts.people === undefined ? [] : [words.people(facts.people)]),
    ].join(', '),
    words.countdown.layOut(facts.layOut, facts.people),
    planText === undefined ? '' : words.countdown.standing(facts.plan),
  ].filter((line) => line !== '');
  const plan =
    planText === undefined ? words.classes.houseAsk : `\`\`\`${codeText(clip(planText, 2_000))}\`\`\``;
  return {
    text: clip(
      [...lines, planText === undefined ? words.classes.houseAsk : inertText(planText)].join('\n'),
      limits.topLevelText,
    ),
    blocks: [
      ...sections('class', lines),
      section('plan', plan),
      ...(planText === undefined
        ? buttons(
            'house',
            houseClassNames.map((name) => ({
              action: actions.houseClass,
              label: name,
              value: printClassValue(scheduled, name),
            })),
          )
        : []),
      ...buttons('change', [changeButton(scheduled, words)]),
    ],
  };
}
