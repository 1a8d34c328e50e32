/** What can be said, from the first word on. */
export const helpWords = {
  lead: 'Write a class as a message and I time it, count its load and check it. Copy this one and send it back:',
  example: [
    'Push & Hinge, 30 min, level 2, 10 people',
    'warm-up 6:00: march, hip hinge',
    'circuit x3, 40/20',
    'push-up',
    'kettlebell swing',
    'plank',
    'rest 60',
    'emom 6',
    '8 goblet squat',
    '10 bent-over row',
    'cool-down to the end',
  ].join('\n'),
  next: 'Its card comes in the thread under your message: there you change it, ask it and send it for review. `help` shows all words.',
  tryButton: 'Try this one',
  triedAlready:
    'It is your newest draft already: its card is in the thread under it, in your messages with me.',
  edits: (edits: readonly string[]) => `*Change the class:* ${codes([...edits, 'undo', 'redo'])}`,
  /** `line`: one that could not be read; without one, only lines are missing. */
  lines: (line: number | undefined) =>
    `*${line === undefined ? 'Go on' : 'Put lines right'}:* ${codes(lineWords(line))}`,
  asks: [
    `*Ask it:* ${codes(['timeline', 'why', 'muscles', 'easier', 'harder', 'no kit', 'last time', 'versions'])}`,
    `*Options for someone:* ${codes(['no jumps', 'no floor', 'no wrists', 'nothing overhead', 'not on the back'])}`,
    `*Then:* ${codes(['send', 'withdraw'])}`,
  ],
  /** Above the edits and asks, where no class is in sight. */
  inItsThread: 'In the thread under a class:',
  anywhere: [
    '*Here, outside any thread*',
    '*An earlier class anew:* `again Row &amp; Squat` · `again Row &amp; Squat open` for its structure alone',
    '*The week:* `week` · `reviews` for head coaches',
    '*A move of our own:* `new move yard crawl like bear crawl` · `our moves`',
    '*Of you:* `my data` · `forget me` · `notices`',
  ],
  review: '*Head coaches, in a review’s thread:* `B1: slower` is a comment on that move.',
  unclearAmongLines: (line: number | undefined) =>
    `I did not read that as a line or an edit. For example: ${codes(lineWords(line))}\n\`help\` shows all that works here.`,
  unclearInThread: (edits: readonly string[]) =>
    `I did not read that as an edit or a question. For example: ${codes([...edits, 'why', 'undo'])}\n\`help\` shows all that works here.`,
} as const;

function lineWords(line: number | undefined): readonly string[] {
  return line === undefined
    ? ['circuit x3, 40/20', 'goblet squat']
    : [`line ${line}: goblet squat`, `drop line ${line}`];
}

function codes(words: readonly string[]): string {
  return words.map((word) => `\`${word}\``).join(' · ');
}
