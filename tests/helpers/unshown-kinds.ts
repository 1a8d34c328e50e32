import { shownBlockKinds, shownElementKinds } from '../../bot/local/page/shown-kinds.ts';

const textKinds = ['plain_text', 'mrkdwn', 'raw_text', 'raw_number'];
const richKinds = /^(rich_text_\w+|text|link|user|channel)$/;
const chartKinds = ['bar', 'line', 'area', 'pie'];
const viewKinds = ['modal', 'home'];
const shown = new Set<string>([
  ...shownBlockKinds,
  ...shownElementKinds,
  ...textKinds,
  ...chartKinds,
  ...viewKinds,
]);

/** The kinds in blocks, or in a whole view, that the local workspace's page has no way to show. */
export const unshownKinds = (value: unknown): readonly string[] => {
  if (Array.isArray(value)) return [...new Set(value.flatMap(unshownKinds))];
  if (typeof value !== 'object' || value === null) return [];
  const own = 'type' in value && typeof value.type === 'string' ? [value.type] : [];
  return [
    ...new Set([
      ...own.filter((kind) => !shown.has(kind) && !richKinds.test(kind)),
      ...Object.values(value).flatMap(unshownKinds),
    ]),
  ];
};
