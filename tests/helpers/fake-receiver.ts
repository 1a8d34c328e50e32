import type { App, Receiver } from '@slack/bolt';

export type Acked = { readonly acks: unknown[]; readonly failed?: unknown };

/** Feeds whole payloads to the real App, as a receiver does, and keeps what was acked. */
export function createFakeReceiver() {
  let app: App | undefined;
  const receiver: Receiver = {
    init: (given) => {
      app = given;
    },
    start: async () => undefined,
    stop: async () => undefined,
  };
  const send = async (
    body: Record<string, unknown>,
    onAck: (ack: unknown) => unknown = () => {},
  ): Promise<Acked> => {
    const acks: unknown[] = [];
    try {
      await app?.processEvent({
        body,
        ack: async (given: unknown) => {
          acks.push(given);
          await onAck(given);
        },
      });
      return { acks };
    } catch (failed) {
      return { acks, failed };
    }
  };
  return { receiver, send };
}
