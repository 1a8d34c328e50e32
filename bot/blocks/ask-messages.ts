import type { MoveId } from '../../domain/catalogue/move.ts';
import type { Limit, OptionLine } from '../../domain/plan/options-sheet.ts';
import type { LineSwap, SwapWish } from '../../domain/plan/swaps-for.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import { planValue } from './draft-card.ts';
import { type ButtonFacts, buttons, sections } from './elements.ts';
import { inSeveral } from './in-several.ts';
import { clip, limits } from './limits.ts';
import type { Show } from './show.ts';

/** A button carries its edit; more lines than this are no edit for a thumb. */
const mostEditLength = 1_400;

/** How many swaps are buttons; the others are told, and work as replies. */
const mostSwapButtons = 20;

/** Substitutes for a whole class, each one tap, and all of them one too. */
export function renderSwaps(
  open: OpenPlan,
  wish: SwapWish,
  swaps: readonly LineSwap[],
  show: Show,
): readonly Message[] {
  const { asks } = show.words;
  if (swaps.length === 0) return [{ text: asks.noSwaps(wish) }];
  const name = nameIn(show);
  const lines = swaps.map(({ label, moveId, to }) =>
    asks.swap(label, name(moveId), to === undefined ? undefined : name(to.moveId)),
  );
  const edits = swaps.flatMap(({ to }) => (to === undefined ? [] : [to.edit]));
  const offered = swapButtons(open, wish, edits, show);
  const more = edits.length > mostSwapButtons ? [asks.swapsCut(mostSwapButtons)] : [];
  const [first, ...others] = inSeveral(asks.swapLead(wish), [...lines, ...more], show.words);
  if (first === undefined) return [];
  return [
    ...(others.length === 0 ? [] : [first, ...others.slice(0, -1)]),
    withButtons(others.at(-1) ?? first, offered),
  ];
}

function swapButtons(
  open: OpenPlan,
  wish: SwapWish,
  edits: readonly string[],
  { words }: Show,
): readonly ButtonFacts[] {
  const all = edits.join('\n');
  const put = (label: string, edit: string): ButtonFacts => ({
    action: actions.applyEdit,
    label,
    value: planValue(open, edit),
  });
  return [
    ...(edits.length > 1 && all.length <= mostEditLength ? [put(words.asks.swapAll(wish), all)] : []),
    ...edits.slice(0, mostSwapButtons).map((edit) => put(edit, edit)),
  ];
}

function withButtons(message: Message, offered: readonly ButtonFacts[]): Message {
  return {
    text: message.text,
    blocks: [...sections('lines', message.text.split('\n')), ...buttons('edits', offered)],
  };
}

/** For each letter what someone does who needs these options; naming nobody. */
export function renderOptions(
  wanted: readonly Limit[],
  sheet: readonly OptionLine[],
  show: Show,
): readonly Message[] {
  return inSeveral(`*${show.words.asks.optionsLead(wanted)}*`, optionLines(sheet, show), show.words);
}

/** The letters that differ, a line each, then those that stay as planned in one line. */
export function optionLines(sheet: readonly OptionLine[], show: Show): readonly string[] {
  const { asks } = show.words;
  const differ = sheet.flatMap((line) => optionLine(line, show));
  if (differ.length === 0) return [asks.allAsPlanned];
  const same = sheet.flatMap(({ label, does }) => (does.kind === 'as planned' ? [label] : []));
  return same.length === 0 ? differ : [...differ, clip(asks.asPlanned(same), limits.section)];
}

function optionLine({ label, moveId, does }: OptionLine, show: Show): readonly string[] {
  const { asks } = show.words;
  const name = nameIn(show);
  switch (does.kind) {
    case 'as planned':
      return [];
    case 'instead':
      return [asks.option(label, name(moveId), name(does.moveId), does.from === 'the plan')];
    case 'none':
      return [asks.noOption(label, name(moveId))];
  }
}

function nameIn({ catalogue }: Show): (id: MoveId) => string {
  return (id) => catalogue.byId.get(id)?.name ?? id;
}
