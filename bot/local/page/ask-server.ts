import type { FieldValue, FormValues } from '../form-values.ts';
import type {
  ClockTarget,
  GestureResult,
  PageState,
  ShownMessage,
  TrafficEntry,
  TrafficLine,
} from '../page-answers.ts';

const unreachable: GestureResult = {
  kind: 'failed',
  message: 'The local workspace does not answer. Is it still running?',
};

const read = async <T>(
  path: string,
  query: Readonly<Record<string, string>> = {},
): Promise<T | undefined> => {
  const response = await fetch(`/local/${path}?${new URLSearchParams(query)}`);
  if (!response.ok) return undefined;
  // The page and the server are built from the same types, so the answer is what they say.
  const answer: T = await response.json();
  return answer;
};

const gesture = async (path: string, body: unknown): Promise<GestureResult> => {
  try {
    const response = await fetch(`/local/${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (!response.ok) return { kind: 'failed', message: `That did not work (${response.status}).` };
    const result: GestureResult = await response.json();
    return result;
  } catch {
    return unreachable;
  }
};

/** Where an element stands: in a message, or in a modal or home. */
export type Surface =
  | { readonly kind: 'message'; readonly place: string; readonly ts: string }
  | { readonly kind: 'view'; readonly id: string };

export const askServer = {
  state: (as: string) => read<PageState>('state', { as }),
  messages: (as: string, place: string) => read<readonly ShownMessage[]>('messages', { as, place }),
  traffic: () => read<readonly TrafficLine[]>('traffic'),
  exchange: (id: number) => read<TrafficEntry>('exchange', { id: String(id) }),
  send: (body: { as: string; place: string; text: string; threadTs?: string }) => gesture('send', body),
  edit: (body: { as: string; place: string; ts: string; text: string }) => gesture('edit', body),
  act: (body: {
    as: string;
    on: Surface;
    blockId: string;
    actionId: string;
    value?: FieldValue;
    values: FormValues;
  }) => gesture('act', body),
  submit: (body: { as: string; view: string; values: FormValues }) => gesture('submit', body),
  close: (body: { as: string; view: string }) => gesture('close', body),
  shortcut: (body: { as: string; place: string; ts: string; callbackId: string }) =>
    gesture('shortcut', body),
  read: (body: { as: string; place: string; threadTs?: string }) => gesture('read', body),
  openApp: (body: { as: string; tab: 'home' | 'messages' }) => gesture('open-app', body),
  setGroup: (body: { group: string; members: readonly string[] }) => gesture('group', body),
  moveClock: (target: ClockTarget) => gesture('clock', target),
  reset: () => gesture('reset', {}),
};
