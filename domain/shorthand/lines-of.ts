/**
 * A line of the draft: `number` counts line ends from 1, `start` is its place in the draft, `text` the words
 * as kept and `clean` the same length in lower case with look-alike signs made plain, so that places agree.
 */
export type Line = {
  readonly number: number;
  readonly start: number;
  readonly text: string;
  readonly clean: string;
};

const plainSigns: Readonly<Record<string, string>> = {
  '×': 'x',
  '✕': 'x',
  '–': '-',
  '—': '-',
  '−': '-',
  '‐': '-',
  '‑': '-',
  '‒': '-',
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  '„': '"',
  '″': '"',
  '′': "'",
  '*': ' ',
  _: ' ',
  '`': ' ',
  '\t': ' ',
  '\u200b': ' ',
  '\u200d': ' ',
  '\ufeff': ' ',
};

const bullet = /^\s*(?:>\s*)*(?:[-•·◦▪‣●○➤→]\s+|[•·◦▪‣●○➤→]|\d{1,3}[.)](?=\s|[a-z?"]))/;

/** All lines with words on them; `;` breaks a line too. */
export function linesOf(keptText: string): readonly Line[] {
  let start = 0;
  return keptText.split('\n').flatMap((whole, index) => {
    const pieces = whole.split(';').map((text) => {
      const line = { number: index + 1, start, text, clean: commaDashes(withoutBullet(cleaned(text))) };
      start += text.length + 1;
      return line;
    });
    return pieces.filter((line) => /[^\s,.]/.test(line.clean));
  });
}

/** The whole line blanked up to its first word, so that a quote mark, bullet or number says nothing. */
function withoutBullet(clean: string): string {
  const marks = bullet.exec(clean)?.[0] ?? /^\s*(?:>\s*)+/.exec(clean)?.[0] ?? '';
  return ' '.repeat(marks.length) + clean.slice(marks.length);
}

/** A dash with a space on each side is a comma. */
function commaDashes(clean: string): string {
  return clean.replace(/(?<=\s)-(?=\s)/g, ',');
}

function cleaned(text: string): string {
  return Array.from({ length: text.length }, (_, index) => plain(text.charAt(index))).join('');
}

function plain(unit: string): string {
  const lower = unit.toLowerCase();
  return plainSigns[unit] ?? (lower.length === 1 ? lower : unit);
}
