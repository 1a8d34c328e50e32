import type { Storage } from '../domain/ports.ts';
import { errorFacts, type Log } from './log.ts';
import type { Asker } from './requests/incoming.ts';
import type { TellAsker } from './tell-asker.ts';
import type { Words } from './words/words.ts';

/** What the ack of a submitted form may still say. */
type AckErrors = (byBlock: Readonly<Record<string, string>>) => Promise<void>;

type Trouble = {
  readonly error: unknown;
  readonly what: string;
  readonly asker: Asker;
  /** `kept`: the message is stored and tried again. `not kept`: not even stored. `none`: decided at once. */
  readonly event: 'none' | 'kept' | 'not kept';
  /** Given while a form's ack is still open: its fields stay filled in. */
  readonly ackErrors?: AckErrors;
  /** Overrides the sentence, given the number. */
  readonly words?: (id: string) => string;
};

export type OnError = (trouble: Trouble) => Promise<void>;

/** The one place where a failure becomes a sentence for the person, with a number that stands in the log too. */
export function createOnError(parts: {
  readonly storage: Pick<Storage, 'isFault'>;
  readonly log: Log;
  readonly words: Words;
  readonly tellAsker: TellAsker;
  readonly newId: () => string;
}): OnError {
  const { storage, log, tellAsker } = parts;
  const { faults } = parts.words;

  const sentence = ({ error, event, words }: Trouble, id: string): string => {
    if (words !== undefined) return words(id);
    if (!storage.isFault(error)) return faults.unexpected(id);
    if (event === 'kept') return faults.keptForLater(id);
    return event === 'not kept' ? faults.notHeard(id) : faults.notSaved(id);
  };

  return async (trouble) => {
    const id = parts.newId().replaceAll('-', '').slice(0, 8);
    log.error('failed', { faultId: id, what: trouble.what, ...errorFacts(trouble.error) });
    const text = sentence(trouble, id);
    try {
      const { formBlock } = trouble.asker;
      if (trouble.ackErrors !== undefined && formBlock !== undefined)
        await trouble.ackErrors({ [formBlock]: text });
      else await tellAsker(trouble.asker, { text });
    } catch (error) {
      log.error('failure not told', { faultId: id, ...errorFacts(error) });
    }
  };
}
