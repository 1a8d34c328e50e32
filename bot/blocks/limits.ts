/** Sizes the platform documents, or safer ones of our own; the one place where blocks are measured. */
export const limits = {
  messageBlocks: 50,
  viewBlocks: 100,
  /** Keeps a view of lines below its 250 KB and its blocks, whatever signs they hold. */
  viewText: 80_000,
  /** All text in one message's blocks; undocumented, so a budget below the 13,200 seen. */
  messageText: 12_000,
  topLevelText: 3_900,
  section: 3_000,
  header: 150,
  buttonText: 75,
  buttonValue: 2_000,
  actionsElements: 25,
  contextElements: 10,
  contextText: 2_000,
  modalTitle: 24,
  selectOptions: 100,
  optionText: 75,
  metadata: 3_000,
  chartCategories: 20,
  chartLabel: 20,
  chartTitle: 50,
} as const;

/** Cuts at a code point, with an ellipsis, so that `text` has at most `most` UTF-16 units. */
export function clip(text: string, most: number): string {
  if (text.length <= most) return text;
  const cut = text.slice(0, most - 1);
  const last = cut.charCodeAt(cut.length - 1);
  const splitsPair = last >= 0xd800 && last <= 0xdbff;
  return `${splitsPair ? cut.slice(0, -1) : cut}…`;
}

/** Joins lines into chunks of at most `most` characters; a line that is longer goes on in the next chunk. */
export function packLines(lines: readonly string[], most: number): readonly string[] {
  const chunks: string[] = [];
  for (const line of lines.flatMap((each) => piecesOf(each, most))) {
    const last = chunks.at(-1);
    if (last !== undefined && last.length + 1 + line.length <= most)
      chunks[chunks.length - 1] = `${last}\n${line}`;
    else chunks.push(line);
  }
  return chunks;
}

/** A line in pieces of at most `most`, parted at a space where there is one, never inside a character or entity. */
function piecesOf(line: string, most: number): readonly string[] {
  const pieces: string[] = [];
  let left = line;
  while (left.length > most) {
    const part = left.slice(0, most);
    const space = part.lastIndexOf(' ');
    const whole = part.replace(/(?:&[a-z]{0,4}|[\uD800-\uDBFF])$/u, '');
    const piece = space > 0 ? part.slice(0, space) : whole;
    pieces.push(piece);
    left = left.slice(piece.length).trimStart();
  }
  return left === '' ? pieces : [...pieces, left];
}

/** Lines up to a number of characters, then how many are left. */
export function firstLines(
  lines: readonly string[],
  most: number,
  left: (count: number) => string,
): readonly string[] {
  let used = 0;
  const fits = lines.findIndex((line) => {
    used += line.length + 1;
    return used > most;
  });
  return fits === -1 ? lines : [...lines.slice(0, fits), left(lines.length - fits)];
}
