import type { ActionsBlock, KnownBlock } from '@slack/types';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { button, context, section } from './elements.ts';
import { inertText } from './escape.ts';

/** Asks the instructor how a class went; each answer is one tap and can be changed. */
export function renderAfterClass(scheduled: ScheduledClass, words: Words): Message {
  const { outcome, id } = scheduled;
  const title = inertText(scheduled.title ?? words.card.untitled);
  const when = words.when(scheduled.startsAt);
  const lead =
    scheduled.coverOpen === true ? words.after.coverLead(title, when) : words.after.lead(title, when);
  const said = outcome === undefined ? '' : inertText(words.after.said(outcome));
  const taught =
    outcome !== undefined && outcome.how !== 'not taught' && outcome.how !== 'as planned, assumed';
  const blocks: readonly KnownBlock[] = [
    section('class', said === '' ? lead : `${lead}\n*${said}*`),
    {
      type: 'actions',
      block_id: 'how',
      elements: [
        button({ action: actions.taughtAsPlanned, label: words.after.asPlanned, value: id }),
        button({ action: actions.openTaughtWithChanges, label: words.after.withChanges, value: id }),
        button({ action: actions.notTaught, label: words.after.notTaught, value: id }),
      ],
    },
    ...(taught ? [effortRow(scheduled, words), lengthRow(scheduled, words)] : []),
    context(
      'hint',
      scheduled.planId === undefined ? `${words.week.taughtHint}\n${words.after.hint}` : words.after.hint,
    ),
  ];
  return { text: said === '' ? `${lead} ${words.after.askInShort}` : `${lead} ${said}`, blocks };
}

function effortRow({ id, outcome }: ScheduledClass, words: Words): ActionsBlock {
  const options = Array.from({ length: 11 }, (_, effort) => ({
    text: { type: 'plain_text' as const, text: words.after.effortOption(effort) },
    value: `${id}|${effort}`,
  }));
  const chosen = outcome?.effort === undefined ? undefined : options[outcome.effort];
  return {
    type: 'actions',
    block_id: 'effort',
    elements: [
      {
        type: 'static_select',
        action_id: actions.effort,
        placeholder: { type: 'plain_text', text: words.after.effortAsk },
        options,
        ...(chosen === undefined ? {} : { initial_option: chosen }),
      },
    ],
  };
}

function lengthRow({ id }: ScheduledClass, words: Words): ActionsBlock {
  const lengths = ['short', 'on time', 'over'] as const;
  return {
    type: 'actions',
    block_id: 'length',
    elements: lengths.map((length, place) =>
      button(
        { action: actions.length, label: words.after.length(length), value: `${id}|${length}` },
        place + 1,
      ),
    ),
  };
}
