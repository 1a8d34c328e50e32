const formats = new Map<string, Intl.DateTimeFormat>();

const formatIn = (timeZone: string, name: string, options: Intl.DateTimeFormatOptions) => {
  const key = `${timeZone} ${name}`;
  const known = formats.get(key) ?? new Intl.DateTimeFormat('en-GB', { timeZone, ...options });
  formats.set(key, known);
  return known;
};

/** `Mon 12 Jan 2026` in the given zone. */
export const printDay = (instant: Date, timeZone: string): string =>
  formatIn(timeZone, 'day', { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' })
    .format(instant)
    .replace(',', '');

/** `Mon 12 Jan` in the given zone. */
export const printShortDay = (instant: Date, timeZone: string): string =>
  formatIn(timeZone, 'short day', { weekday: 'short', day: 'numeric', month: 'short' })
    .format(instant)
    .replace(',', '');

/** `07:00` in the given zone. */
export const printTime = (instant: Date, timeZone: string): string =>
  formatIn(timeZone, 'time', { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).format(instant);

/** `2026-01-12T07:00` in the given zone, for a date-time field. */
export const printFieldTime = (instant: Date, timeZone: string): string => {
  const day = formatIn(timeZone, 'field', { year: 'numeric', month: '2-digit', day: '2-digit' })
    .format(instant)
    .split('/')
    .reverse()
    .join('-');
  return `${day}T${printTime(instant, timeZone)}`;
};

export const instantOf = (ts: string): Date => new Date(Number(ts.split('.')[0]) * 1000);
