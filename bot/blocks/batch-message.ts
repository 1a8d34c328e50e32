import type { KnownBlock } from '@slack/types';
import { z } from 'zod';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { actions } from '../ids.ts';
import { readJson } from './button-value.ts';
import { titleOf } from './draft-card.ts';
import { buttons, linked, sections } from './elements.ts';
import { clip, firstLines, limits } from './limits.ts';
import type { Show } from './show.ts';

/** A plan that waits; `trouble` says why it is looked at, empty where it is clean. */
export type BatchLine = {
  readonly open: OpenPlan;
  readonly trouble: string;
  /** Address of the message it is decided under. */
  readonly link?: string;
};
export type Batch = { readonly clean: readonly BatchLine[]; readonly toLookAt: readonly BatchLine[] };

/** As many plans as one button's value holds; the next tap takes the next. */
const mostAtOnce = 40;
const mostOfLines = 8_000;

const batchValue = z.array(z.tuple([z.string().min(1).max(80), z.int().min(1)])).max(mostAtOnce);

/** Undefined for anything that this app did not make. */
export function readBatchValue(
  text: string,
): readonly { readonly plan: string; readonly version: number }[] | undefined {
  const read = batchValue.safeParse(readJson(text));
  return read.success ? read.data.map(([plan, version]) => ({ plan, version })) : undefined;
}

/** `9 clean, 3 to look at`, each named, and one button for the clean ones. */
export function renderBatch({ clean, toLookAt }: Batch, { words }: Pick<Show, 'words'>): Message {
  const { coach } = words;
  const lead = coach.batchLead(clean.length, toLookAt.length);
  const all = [
    ...(clean.length === 0 ? [] : [coach.batchClean, ...clean.map((each) => lineOf(each, { words }))]),
    ...(toLookAt.length === 0
      ? []
      : [
          ...(clean.length === 0 ? [] : [coach.batchLook]),
          ...toLookAt.map((each) => `${lineOf(each, { words })}: ${clip(each.trouble, mostOfTrouble)}`),
        ]),
  ];
  const lines = firstLines(all, mostOfLines, coach.batchMore);
  return {
    text: clip([lead, ...lines].join('\n'), limits.topLevelText),
    blocks: [...sections('waiting', [`*${lead}*`, ...lines]), ...approveCleanButton(clean, { words })],
  };
}

/** One tap for all that are clean; none where there is none. */
export function approveCleanButton(
  clean: readonly BatchLine[],
  { words }: Pick<Show, 'words'>,
): readonly KnownBlock[] {
  const offered = clean.slice(0, mostAtOnce);
  if (offered.length === 0) return [];
  const value = JSON.stringify(offered.map(({ open: { record } }) => [record.id, record.currentVersion]));
  const label = words.coach.approveClean(offered.length);
  return buttons('clean', [{ action: actions.approveClean, label, value, style: 'primary' }]);
}

export const mostOfTrouble = 200;

export function renderBatchDone(
  approved: number,
  leftOut: readonly BatchLine[],
  { words }: Pick<Show, 'words'>,
): Message {
  const lines = [
    words.coach.approvedClean(approved),
    ...(leftOut.length === 0 ? [] : [words.coach.leftOut, ...leftOut.map((each) => lineOf(each, { words }))]),
  ];
  return { text: clip(lines.join('\n'), limits.topLevelText) };
}

function lineOf({ open, link }: BatchLine, { words }: Pick<Show, 'words'>): string {
  const { record, version, scheduled } = open;
  const when = scheduled === undefined ? '' : words.when(scheduled.startsAt);
  return `• ${words.coach.batchLine(linked(titleOf(version.plan, words), link), record.authorId, record.currentVersion, when)}`;
}
