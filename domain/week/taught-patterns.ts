import { type Pattern, patterns } from '../catalogue/patterns.ts';

/** Words an instructor says for a pattern, beside the patterns' own names. Common practice. */
const patternWords: ReadonlyMap<string, Pattern> = new Map<string, Pattern>(
  Object.entries({
    push: 'horizontal push',
    press: 'vertical push',
    overhead: 'vertical push',
    pull: 'horizontal pull',
    row: 'horizontal pull',
    pulldown: 'vertical pull',
    core: 'anti-extension',
    plank: 'anti-extension',
    twist: 'rotation',
    crunch: 'trunk flexion',
    cardio: 'locomotion',
    run: 'locomotion',
  } as const),
);

/** What a line `taught: squat, hinge, push, core` says. */
export type TaughtLine = {
  readonly patterns: readonly Pattern[];
  /** Words that name no pattern, as typed. */
  readonly unknown: readonly string[];
};

/** Undefined where the text is no such line. */
export function readTaughtLine(text: string): TaughtLine | undefined {
  const [, list] = /^\s*taught\s*:\s*(.+)$/iu.exec(text) ?? [];
  if (list === undefined) return undefined;
  const words = list
    .split(/[,;·+&/]|\band\b/iu)
    .map((word) => word.trim())
    .filter((word) => word !== '');
  const read = words.map((word) => ({ word, pattern: patternOf(word) }));
  return {
    patterns: patterns.filter((pattern) => read.some((each) => each.pattern === pattern)),
    unknown: read.filter(({ pattern }) => pattern === undefined).map(({ word }) => word),
  };
}

function patternOf(typed: string): Pattern | undefined {
  const word = typed.toLowerCase().replace(/[.!]+$/, '');
  const forms = [word, word.replace(/ies$/, 'y'), word.replace(/es$/, ''), word.replace(/s$/, '')];
  const own = patterns.find((pattern) => forms.includes(pattern));
  return own ?? forms.map((form) => patternWords.get(form)).find((pattern) => pattern !== undefined);
}
