import type { App, Receiver } from '@slack/bolt';

type ProcessEvent = App['processEvent'];
type ReceiverEvent = Parameters<ProcessEvent>[0];

/** Runs between the receiver and the app; `next` hands the payload on. */
export type BeforeApp = (event: ReceiverEvent, next: ProcessEvent) => Promise<void>;

/**
 * A receiver whose payloads pass through `before` first: the app acks an event before any listener runs, so
 * what must happen earlier can happen only here.
 */
export function interceptReceiver(receiver: Receiver, before: BeforeApp): Receiver {
  return {
    init: (app) => {
      const processEvent: ProcessEvent = (event) => before(event, (each) => app.processEvent(each));
      const intercepted: App = Object.create(app, { processEvent: { value: processEvent } });
      receiver.init(intercepted);
    },
    start: (...args) => receiver.start(...args),
    stop: (...args) => receiver.stop(...args),
  };
}
