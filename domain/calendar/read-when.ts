import { type DaySaid, monthNames } from './days-meant.ts';
import { weekdays } from './iso-week.ts';
import { isCalendarDate } from './wall-time.ts';

/** Which class is meant: a day, a time, or both; nothing where neither was said. */
export type ClassWhen = DaySaid & {
  /** `HH:MM`. */
  readonly time?: string;
};

const leapYear = 2024;
const dayOfMonth = '(?:0?[1-9]|[12]\\d|3[01])';
const monthName = `(?:${monthNames.flat().join('|')})`;
const year = '(?:,?\\s+\\d{4}(?![\\d:.]))';
const dated = [
  '\\d{4}-\\d{2}-\\d{2}',
  `${dayOfMonth}(?:st|nd|rd|th|\\.)?(?:\\s+of)?\\s+${monthName}\\b\\.?${year}?`,
  `${monthName}\\b\\.?\\s+${dayOfMonth}(?:st|nd|rd|th)?(?![\\d:.])${year}?`,
  `${dayOfMonth}\\.(?:0?[1-9]|1[0-2])\\.(?:\\d{4}(?![\\d:.]))?`,
].join('|');
const weekday =
  '(?:mon(?:day)?|tue(?:sday|s)?|wed(?:nesday)?|thu(?:rsday|rs|r)?|fri(?:day)?|sat(?:urday)?|sun(?:day)?)\\b';

/** A day, as the source of a pattern: `Thu`, `next Thu`, `Thu 15 Oct`, `15 Oct`, `15.10.`, `2026-10-15`, `today`. */
export const dayPattern = `(?:(?:on\\s+)?(?:(?:this|next)\\s+)?(?:today|tonight|tomorrow|${dated}|${weekday}\\.?(?:[\\s,]+(?:${dated}))?))`;
const timePattern = '(?:at\\s+)?\\d{1,2}(?:[:.]\\d{2})?\\s*(?:am|pm)?';
/** A day, a time, both, or nothing. */
export const whenPattern = `(?:${dayPattern})?[\\s,]*(?:${timePattern})?`;

/** `Thu 18:30`, `Wed 21 Oct, 12:30`, `tomorrow 6pm`, `18:30`; nothing at all reads as no wish. */
export function readWhen(text: string): ClassWhen | undefined {
  const words = text.trim().toLowerCase();
  const day = new RegExp(`^${dayPattern}`).exec(words)?.[0] ?? '';
  const rest = words.slice(day.length).replace(/^[\s,]+/, '');
  const time = rest === '' ? undefined : readTime(rest.replace(/^at\s+/, ''));
  if (rest !== '' && time === undefined) return undefined;
  const said = day === '' ? {} : readDay(day.replace(/^on\s+/, ''));
  return said && { ...said, ...(time === undefined ? {} : { time }) };
}

function readDay(text: string): DaySaid | undefined {
  const [, which, day = ''] = /^(?:(this|next)\s+)?(.*)$/.exec(text) ?? [];
  if (day === 'today' || day === 'tonight') return { inDays: 0 };
  if (day === 'tomorrow') return { inDays: 1 };
  const named = weekdays.find(
    (each) => new RegExp(`^${weekday}`).test(day) && day.startsWith(each.toLowerCase()),
  );
  const date = named === undefined ? day : day.replace(/^[a-z]+\.?[\s,]*/, '');
  const read = date === '' ? {} : readDate(date);
  if (read === undefined) return undefined;
  return {
    ...(named === undefined ? {} : { weekday: named }),
    ...(which === 'this' || which === 'next' ? { which } : {}),
    ...read,
  };
}

function readDate(text: string): Pick<DaySaid, 'date' | 'monthDay'> | undefined {
  if (/^\d{4}-/.test(text)) return isCalendarDate(text) ? { date: text } : undefined;
  const [day = 0, ...others] = (text.match(/\d+/g) ?? []).map(Number);
  const named = monthNames.findIndex((names) => names.some((name) => new RegExp(`\\b${name}\\b`).test(text)));
  const [month = 0, inYear] = named === -1 ? others : [named + 1, ...others];
  const [monthText, dayText] = [month, day].map((number) => String(number).padStart(2, '0'));
  // A leap year has every day there is.
  const date = `${inYear ?? leapYear}-${monthText}-${dayText}`;
  if (!isCalendarDate(date)) return undefined;
  return inYear === undefined ? { monthDay: { month, day } } : { date };
}

function readTime(text: string): string | undefined {
  const [, hourText = '', minuteText = '00', half] =
    /^(\d{1,2})(?:[:.](\d{2}))?\s*(am|pm)?$/.exec(text) ?? [];
  const hours = Number(hourText);
  if (hourText === '' || Number(minuteText) > 59) return undefined;
  if (half === undefined) {
    const isClock = /[:.]/.test(text) && hours < 24;
    return isClock ? `${String(hours).padStart(2, '0')}:${minuteText}` : undefined;
  }
  if (hours < 1 || hours > 12) return undefined;
  const whole = (hours % 12) + (half === 'pm' ? 12 : 0);
  return `${String(whole).padStart(2, '0')}:${minuteText}`;
}
