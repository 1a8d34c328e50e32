import type { AcceptedBlock } from '../accepted-blocks.ts';
import type { AcceptedElement } from '../accepted-elements.ts';

export type ShownBlockKind = AcceptedBlock['type'];
export type ShownElementKind = AcceptedElement['type'];

/** Every kind of block the page can show; a kind the app sends and that is missing here would be invisible. */
export const shownBlockKinds = [
  'header',
  'section',
  'context',
  'divider',
  'actions',
  'input',
  'image',
  'rich_text',
  'table',
  'data_visualization',
] as const satisfies readonly ShownBlockKind[];

/** Every kind of element the page can show and act on. */
export const shownElementKinds = [
  'button',
  'static_select',
  'multi_static_select',
  'users_select',
  'multi_users_select',
  'conversations_select',
  'overflow',
  'radio_buttons',
  'checkboxes',
  'datepicker',
  'timepicker',
  'plain_text_input',
  'number_input',
  'image',
] as const satisfies readonly ShownElementKind[];
