import { forgottenMention, type NoticePayload, type StoredNotice } from '../../domain/ports.ts';

/** What is still to be sent of a person who was forgotten since names nobody. */
export function sayForgotten(notice: StoredNotice, as: string): StoredNotice {
  const text = JSON.stringify(notice.payload);
  if (!text.includes(forgottenMention)) return notice;
  const payload: NoticePayload = JSON.parse(text.replaceAll(forgottenMention, as));
  return { ...notice, payload };
}
