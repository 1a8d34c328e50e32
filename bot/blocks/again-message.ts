import type { PlanId } from '../../domain/calendar/scheduled-class.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import { printButtonValue } from './button-value.ts';
import { buttons, sections } from './elements.ts';

/** A class to start from: with its moves, or with open lines. */
type Earlier = {
  readonly planId: PlanId;
  readonly version: number;
  readonly title: string;
  readonly isOpen: boolean;
};

/** What of a button's `name` says that its lines are open. */
export const openLinesWanted = 'open';

/** Which class once more: a button each. */
export function renderAgain(text: string, earlier: readonly Earlier[]): Message {
  return {
    text,
    blocks: [
      ...sections('again', [text]),
      ...buttons(
        'again-from',
        earlier.map(({ planId, version, title, isOpen }) => ({
          action: actions.startAgain,
          label: title,
          value: printButtonValue({ plan: planId, version, ...(isOpen ? { name: openLinesWanted } : {}) }),
        })),
      ),
    ],
  };
}
