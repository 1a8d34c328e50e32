import { type DefaultSource, defaultSources } from '../../domain/default-sources.ts';
import { defaultSettings } from '../../domain/settings.ts';

type Row = { readonly name: string; readonly value: string; readonly source: string };

const isSource = (value: object): value is DefaultSource => 'kind' in value;

const lookIn = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).find(([name]) => name === key)?.[1]
    : undefined;

/** Up to four significant digits: 0.3333 for a third. */
const numberText = (value: number): string => String(Number(value.toPrecision(4)));

const valueText = (value: unknown): string => {
  if (value === undefined) return 'none';
  if (typeof value === 'number') return numberText(value);
  if (typeof value === 'boolean') return value ? 'on' : 'off';
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(valueText).join(', ');
  if (typeof value !== 'object' || value === null) return String(value);
  const entries = Object.entries(value);
  if (entries.length === 0) return 'none';
  return entries.map(([name, each]) => `${name} ${valueText(each)}`).join(', ');
};

const sourceText = (source: DefaultSource): string => {
  switch (source.kind) {
    case 'published':
      return source.source;
    case 'common practice':
      return source.note === undefined ? '*common practice*' : `*common practice*; ${source.note}`;
    case 'ours':
      return `*ours*: ${source.note}`;
    case 'set by the studio':
      return 'each studio says it itself';
  }
};

const rowsOf = (path: string, sources: object, values: unknown): readonly Row[] =>
  Object.entries(sources).flatMap(([key, source]: [string, unknown]) => {
    if (typeof source !== 'object' || source === null) return [];
    const name = path === '' ? key : `${path}.${key}`;
    const value = lookIn(values, key);
    return isSource(source)
      ? [{ name, value: valueText(value), source: sourceText(source) }]
      : rowsOf(name, source, value);
  });

/** The table of all defaults with their sources, in the order of the code. */
export const defaultsTable = (): string =>
  [
    '| setting | default | source |',
    '|---|---|---|',
    ...rowsOf('', defaultSources, defaultSettings).map(
      ({ name, value, source }) => `| \`${name}\` | ${value} | ${source} |`,
    ),
  ].join('\n');

const [start, end] = ['<!-- defaults -->', '<!-- /defaults -->'];

/** The text with the table between its two marks. */
export const withDefaultsTable = (text: string): string => {
  const [from, to] = [text.indexOf(start), text.indexOf(end)];
  if (from < 0 || to < from) throw new Error(`The marks ${start} and ${end} are missing.`);
  return `${text.slice(0, from + start.length)}\n${defaultsTable()}\n${text.slice(to)}`;
};
