import type { NoticeKind } from '../../domain/ports.ts';
import { isHeadCoach, mayForgetOthers } from '../../domain/who-may.ts';
import { renderForgetMe, renderNoticesLead } from '../blocks/data-messages.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk, Message } from '../handling.ts';
import { forgetPerson } from './forget-person.ts';

/** `my data`, `forget me`, `notices`, `forget @someone`: the answer, or nothing for other words. */
export async function sayOfData(desk: Desk, personId: string, text: string): Promise<Message | undefined> {
  const said = text.trim().toLowerCase().replaceAll(/\s+/g, ' ');
  if (said === 'my data') return { text: await myDataText(desk, personId) };
  if (said === 'forget me') return renderForgetMe(desk.words);
  if (said === 'notices' || said === 'my notices') return renderNoticesLead(desk.words);
  const [, other] = /^forget\s+<@([A-Z0-9]+)(?:\|[^>]*)?>$/i.exec(text.trim()) ?? [];
  return other === undefined ? undefined : forgetOther(desk, personId, other);
}

export async function myDataText(desk: Desk, personId: string): Promise<string> {
  const { stores, studioId, settings, words } = desk;
  const data = await stores.care.collectPerson(studioId, personId);
  const roles = [
    ...(isHeadCoach(settings, personId) ? [words.data.headCoach] : []),
    ...(settings.admins?.includes(personId) ? [words.data.admin] : []),
    ...(settings.trustedInstructors?.includes(personId) ? [words.data.trustedInstructor] : []),
    ...(settings.slots.some(({ instructorId }) => instructorId === personId) ? [words.data.instructor] : []),
  ];
  const off = await stores.care.listSwitchedOff(studioId, personId);
  return words.data.mine({ ...data, roles, off: [...off] }, settings.retention, inertText);
}

async function forgetOther(desk: Desk, by: string, personId: string): Promise<Message> {
  const { data } = desk.words;
  if (by !== personId && !mayForgetOthers(desk.settings, by)) return { text: data.onlyCoachForgets };
  await forgetPerson(desk, personId, []);
  return { text: data.forgottenOther };
}

/** Says once what is kept, why and how long. */
export async function tellFirstRun(desk: Desk, personId: string): Promise<void> {
  await desk.stores.notices.enqueue(desk.studioId, {
    key: `first-run:${personId}`,
    to: personId,
    action: { kind: 'post' },
    payload: { text: desk.words.data.firstRun(desk.settings.retention) },
    causedAt: desk.now,
  });
}

/** Whether a person hears of this. */
export async function hears(desk: Desk, personId: string, kind: NoticeKind): Promise<boolean> {
  return !(await desk.stores.care.listSwitchedOff(desk.studioId, personId)).has(kind);
}
