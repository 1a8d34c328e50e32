import type { ActionsBlock, Button, ContextBlock, HeaderBlock, SectionBlock } from '@slack/types';
import { clip, limits, packLines } from './limits.ts';

export type ButtonFacts = {
  readonly action: string;
  readonly label: string;
  readonly value: string;
  readonly style?: 'primary' | 'danger';
};

/** An action id is unique in its message: the handler's name, then `:` and the place of the button. */
export function button({ action, label, value, style }: ButtonFacts, place = 0): Button {
  return {
    type: 'button',
    action_id: place === 0 ? action : `${action}:${place}`,
    text: { type: 'plain_text', text: clip(label, limits.buttonText) },
    value,
    ...(style === undefined ? {} : { style }),
  };
}

export function buttons(blockId: string, facts: readonly ButtonFacts[]): readonly ActionsBlock[] {
  if (facts.length === 0) return [];
  const elements = facts.slice(0, limits.actionsElements).map((each, place) => button(each, place));
  return [{ type: 'actions', block_id: blockId, elements }];
}

/** Escaped text that leads to an address, where there is one. */
export function linked(text: string, link: string | undefined): string {
  return link === undefined ? text : `<${link}|${text}>`;
}

export function header(blockId: string, text: string): HeaderBlock {
  return { type: 'header', block_id: blockId, text: { type: 'plain_text', text: clip(text, limits.header) } };
}

export function section(blockId: string, text: string): SectionBlock {
  return {
    type: 'section',
    block_id: blockId,
    text: { type: 'mrkdwn', text: clip(text, limits.section), verbatim: true },
  };
}

/** Lines as one or more sections, none past its limit; no lines give no section. */
export function sections(blockId: string, lines: readonly string[]): readonly SectionBlock[] {
  const filled = lines.filter((line) => line !== '');
  return packLines(filled, limits.section).map((text, place) =>
    section(place === 0 ? blockId : `${blockId}-${place + 1}`, text),
  );
}

export function context(blockId: string, text: string): ContextBlock {
  return {
    type: 'context',
    block_id: blockId,
    elements: [{ type: 'mrkdwn', text: clip(text, limits.contextText), verbatim: true }],
  };
}
