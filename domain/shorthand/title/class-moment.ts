import { DateTime } from 'luxon';
import type { WallTime } from '../../plan/plan.ts';
import { anyPhrase, type Match, past, phraseOf, sign } from '../matches.ts';
import type { Token } from '../tokens-of.ts';

/** A day and a time as typed; without a day the time stands alone. */
export type TypedMoment = { readonly day?: Day; readonly minutes: number };

type Day =
  | { readonly kind: 'weekday'; readonly weekday: number }
  | { readonly kind: 'in days'; readonly days: number }
  | { readonly kind: 'date'; readonly date: string };

const dayNames = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

const days: ReadonlyMap<string, Day> = new Map<string, Day>([
  ...dayNames.flatMap((name, index) =>
    dayShorts(name).map((words) => [words, { kind: 'weekday', weekday: index + 1 }] as const),
  ),
  ['today', { kind: 'in days', days: 0 }],
  ['tonight', { kind: 'in days', days: 0 }],
  ['tomorrow', { kind: 'in days', days: 1 }],
]);

function dayShorts(name: string): readonly string[] {
  const shorts = [name, name.slice(0, 3)];
  return name === 'tuesday'
    ? [...shorts, 'tues']
    : name === 'thursday'
      ? [...shorts, 'thur', 'thurs']
      : shorts;
}

/** `Thu 18:30`, `Wed 6.30pm`, `tomorrow 6pm`, `18:30 Thu`, `2026-11-26 18:30`, or a time alone. */
export function momentAt(tokens: readonly Token[], at: number): Match<TypedMoment> {
  const day = dayAt(tokens, at);
  if (day !== undefined) {
    const from = past(tokens, sign(tokens, day.next, ',')?.next ?? day.next, 'at');
    const time = timeAt(tokens, from, true);
    return time && { value: { day: day.value, minutes: time.value }, next: time.next };
  }
  const time = timeAt(tokens, past(tokens, at, 'at'), false);
  if (time === undefined) return undefined;
  const behind = dayAt(tokens, past(tokens, time.next, 'on'));
  return behind === undefined
    ? { value: { minutes: time.value }, next: time.next }
    : { value: { day: behind.value, minutes: time.value }, next: behind.next };
}

function dayAt(tokens: readonly Token[], at: number): Match<Day> {
  const found = phraseOf(tokens, at, days);
  if (found !== undefined) return { ...found, next: sign(tokens, found.next, '.')?.next ?? found.next };
  const parts = [0, 2, 4].map((place) => tokens[at + place]);
  const [year, month, day] = parts.map((token) => (token?.kind === 'number' ? token.text : undefined));
  if (year?.length !== 4 || month === undefined || day === undefined) return undefined;
  if (tokens[at + 1]?.text !== '-' || tokens[at + 3]?.text !== '-') return undefined;
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return DateTime.fromISO(date, { zone: 'utc' }).isValid
    ? { value: { kind: 'date', date }, next: at + 5 }
    : undefined;
}

/** Minutes from midnight. Behind a day `18.30` is a time too; a bare number needs am or pm. */
function timeAt(tokens: readonly Token[], at: number, behindDay: boolean): Match<number> {
  const token = tokens[at];
  if (token === undefined || (token.kind !== 'clock' && token.kind !== 'number')) return undefined;
  const [hourText = '', minuteText = '0'] = token.text.split(/[:.]/);
  const half = anyPhrase(tokens, at + 1, ['am', 'pm', 'a.m.', 'p.m.', 'a.m', 'p.m'] as const);
  const hours = Number(hourText);
  const minutes = Number(minuteText);
  if (anyPhrase(tokens, at + 1, ['h', 'hr', 'hrs', 'hour', 'hours']) !== undefined) return undefined;
  if (minutes > 59 || (minuteText.length !== 2 && minuteText !== '0')) return undefined;
  if (half !== undefined) {
    if (hours < 1 || hours > 12) return undefined;
    const afternoon = half.value.startsWith('p') ? 12 : 0;
    return { value: ((hours % 12) + afternoon) * 60 + minutes, next: half.next };
  }
  const clocked = token.kind === 'clock' || (behindDay && token.text.includes('.'));
  return clocked && hours <= 23 ? { value: hours * 60 + minutes, next: at + 1 } : undefined;
}

/** The next such moment after `now` in the zone; undefined where a day already named has passed. */
export function wallTimeOf(moment: TypedMoment, now: string, zone: string): WallTime | undefined {
  const here = DateTime.fromISO(now, { zone });
  const { day, minutes } = moment;
  const onDay = (offset: number) =>
    here
      .startOf('day')
      .plus({ days: offset })
      .set({ hour: Math.floor(minutes / 60), minute: minutes % 60 });
  const wall = (date: string): WallTime => ({ date, time: clockOf(minutes) });
  const dateAfter = (offset: number) => here.startOf('day').plus({ days: offset }).toFormat('yyyy-MM-dd');
  if (day === undefined) return wall(dateAfter(onDay(0) > here ? 0 : 1));
  switch (day.kind) {
    case 'date':
      return wall(day.date);
    case 'in days':
      return onDay(day.days) > here ? wall(dateAfter(day.days)) : undefined;
    case 'weekday': {
      const ahead = (day.weekday - here.weekday + 7) % 7;
      return wall(dateAfter(onDay(ahead) > here ? ahead : ahead + 7));
    }
  }
}

function clockOf(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}
