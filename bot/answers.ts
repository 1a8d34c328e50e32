import type { WebClient } from '@slack/web-api';
import type { StudioId } from '../domain/ports.ts';
import type { Answer } from './handling.ts';
import type { Sender } from './notices/sender.ts';
import type { OnError } from './on-error.ts';
import type { ReadUserGroups } from './read-user-groups.ts';
import type { Asker } from './requests/incoming.ts';
import type { TellAsker } from './tell-asker.ts';
import type { Words } from './words/words.ts';

const linkWaitMs = 15_000;

/** Carries out what a handler answered, after the ack; one that fails is told and stops no other. */
export type CarryOut = (studioId: StudioId, asker: Asker, answers: readonly Answer[]) => Promise<void>;

export function createCarryOut(parts: {
  readonly client: WebClient;
  readonly sender: Sender;
  readonly readUserGroups: ReadUserGroups;
  readonly tellAsker: TellAsker;
  readonly onError: OnError;
  readonly words: Words;
}): CarryOut {
  const { client, sender, readUserGroups, tellAsker, onError, words } = parts;

  const link = async (studioId: StudioId, asker: Asker, answer: Answer & { kind: 'link to you' }) => {
    const sentTo = await sender.whenSent(studioId, answer.noticeKey, linkWaitMs);
    if (sentTo === undefined) return tellAsker(asker, { text: words.faults.savedPostDelayed });
    const { place: channel, stamp } = sentTo;
    const place = answer.place ?? asker.place;
    if (place === channel) return;
    const { permalink } = await client.chat.getPermalink({ channel, message_ts: stamp });
    if (permalink === undefined) throw new Error('The workspace gave no link.');
    return tellAsker({ ...asker, ...(place === undefined ? {} : { place }) }, answer.message(permalink));
  };

  const carryOut = async (studioId: StudioId, asker: Asker, answer: Answer): Promise<void> => {
    switch (answer.kind) {
      case 'open view':
        await client.views.open({ trigger_id: answer.triggerId, view: answer.view });
        return;
      case 'update view':
        await client.views.update({ view_id: answer.viewId, view: answer.view });
        return;
      case 'publish home':
        await client.views.publish({ user_id: answer.personId, view: answer.view });
        return;
      case 'only to you':
        return tellAsker(asker, answer.message);
      case 'link to you':
        return link(studioId, asker, answer);
      case 'read groups':
        return carryOutAll(studioId, asker, answer.next(await readUserGroups(studioId)));
    }
  };

  const carryOutAll: CarryOut = async (studioId, asker, answers) => {
    for (const answer of answers) {
      try {
        await carryOut(studioId, asker, answer);
      } catch (error) {
        const what = `answer: ${answer.kind}`;
        await onError({ error, what, asker, event: 'none', words: wordsFor(answer, words) });
      }
    }
  };
  return carryOutAll;
}

/** The change stands by now: none of these says that nothing was done. */
function wordsFor({ kind }: Answer, { faults }: Words): (id: string) => string {
  switch (kind) {
    case 'open view':
      return faults.formNotOpened;
    case 'link to you':
      return faults.savedWithoutLink;
    case 'update view':
    case 'publish home':
    case 'only to you':
    case 'read groups':
      return faults.answerNotShown;
  }
}
