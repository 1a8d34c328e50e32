import type { Context } from '../../context.ts';
import type { PlanFacts } from '../../plan/plan.ts';
import { samePlain } from '../../plan/same-plain.ts';
import type { Span } from '../../span.ts';
import { spanOf } from '../blocks/clauses.ts';
import { limits } from '../limits.ts';
import type { Line } from '../lines-of.ts';
import type { LimitedThing } from '../problem.ts';
import { type Token, tokensOf } from '../tokens-of.ts';
import { nothingTold, type Told, tellNote, tellProblem } from '../told.ts';
import { dateOnOtherWeekday, wallTimeOf } from './class-moment.ts';
import { levelOf, type TitleFact, titleFactAt } from './title-facts.ts';

/** The facts of the first line; those not said are absent. */
export type TitleFacts = Partial<Omit<PlanFacts, 'kit'>>;

type PlacedFact = { readonly fact: TitleFact; readonly span: Span; readonly amidTitle: boolean };

/**
 * The title and whatever else the first line says, in any order; `already` is what lines above it say. The
 * same fact said twice is a problem only where the two differ.
 */
export function readTitleLine(
  line: Line,
  told: Told,
  context: Pick<Context, 'settings' | 'now'>,
  already: TitleFacts = {},
): TitleFacts {
  const { facts, title } = partTitle(
    tokensOf(line),
    told.text,
    context.settings.rooms.map(({ name }) => name),
  );
  let read: TitleFacts = title === '' ? already : { ...already, title };
  for (const placed of facts) {
    const fact = readFact(placed, line, told, context);
    const twice = Object.entries(fact).find(([key]) => key in read);
    if (twice === undefined) read = { ...read, ...fact };
    else if (!Object.entries(read).some((said) => samePlain(said, twice))) {
      const [key] = twice;
      tellProblem(told, line.number, placed.span, { code: 'said-twice', what: factNames[key] ?? key });
    }
  }
  return read;
}

/** Whether a line below the first says nothing but facts of the class. */
export function isFactsLine(line: Line, told: Told, context: Pick<Context, 'settings' | 'now'>): boolean {
  const { title, ...facts } = readTitleLine(line, nothingTold(told.text), context);
  return title === undefined && Object.keys(facts).length > 0;
}

const factNames: Readonly<Record<string, string>> = {
  slotSeconds: 'slot',
  startsAt: 'time',
  olderAdults: 'older adults',
  hotRoom: 'hot room',
};

/** Facts are taken out of the line; what is left between the commas is the title. */
function partTitle(
  tokens: readonly Token[],
  text: string,
  rooms: readonly string[],
): { readonly facts: readonly PlacedFact[]; readonly title: string } {
  const factAt = titleFactAt(rooms);
  const found: { fact: TitleFact; from: number; next: number }[] = [];
  const besideFact = (at: number) => found.at(-1)?.next === at || factAt(tokens, at + 1) !== undefined;
  const left: (readonly Token[])[] = [];
  let piece: Token[] = [];
  for (let at = 0; at < tokens.length; ) {
    const fact = factAt(tokens, at);
    const token = tokens[at];
    if (fact !== undefined) {
      found.push({ fact: fact.value, from: at, next: fact.next });
      at = fact.next;
      continue;
    }
    if (token?.text === ',' || (isPartingSign(tokens, at) && besideFact(at))) {
      left.push(piece);
      piece = [];
    } else if (token !== undefined) piece.push(token);
    at += 1;
  }
  left.push(piece);
  const titleAt = new Set(left.flat().map(({ start }) => start));
  const amid = (from: number, next: number) => {
    const [before, behind] = [tokens[from - 1], tokens[next]];
    return titleAt.has(before?.start ?? -1) || titleAt.has(behind?.start ?? -1);
  };
  return {
    facts: found.map(({ fact, from, next }) => ({
      fact,
      span: spanOf(tokens, from, next),
      amidTitle: amid(from, next),
    })),
    title: left
      .map((words) => wordsAsTyped(words, text))
      .filter((words) => words !== '')
      .join(', '),
  };
}

const partingSigns: ReadonlySet<string> = new Set(['/', '|', '·', '•']);

/** `Strong / 45 min`: a sign with a space on each side parts as a comma does. */
function isPartingSign(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at];
  return (
    token !== undefined && partingSigns.has(token.text) && !token.glued && tokens[at + 1]?.glued !== true
  );
}

/** The words of the draft under these tokens, single spaces between those that stand apart. */
function wordsAsTyped(tokens: readonly Token[], text: string): string {
  return tokens
    .map((token, index) => {
      const apart = index > 0 && token.start !== tokens[index - 1]?.end;
      return (apart ? ' ' : '') + text.slice(token.start, token.end);
    })
    .join('');
}

function readFact(
  { fact, span, amidTitle }: PlacedFact,
  line: Line,
  told: Told,
  { settings, now }: Pick<Context, 'settings' | 'now'>,
): TitleFacts {
  const within = (what: LimitedThing, value: number, { least, most }: { least: number; most: number }) => {
    const good = value >= least && value <= most;
    if (!good) tellProblem(told, line.number, span, { code: 'out-of-range', what, least, most });
    return good;
  };
  switch (fact.kind) {
    case 'slot':
      return within('slot', fact.seconds, limits.slotSeconds) ? { slotSeconds: fact.seconds } : {};
    case 'level': {
      const level = levelOf(fact.level);
      if (level === undefined) within('level', fact.level, limits.level);
      return level === undefined ? {} : { level };
    }
    case 'mixed':
      if (amidTitle) tellNote(told, { code: 'fact-in-title', fact: 'mixed level' }, span);
      return { level: 'mixed' };
    case 'people':
      return within('people', fact.people, limits.people) ? { people: fact.people } : {};
    case 'focus':
    case 'aim':
      return { [fact.kind]: told.text.slice(fact.start, fact.end).replaceAll(/\s+/g, ' ').trim() };
    case 'beginners':
    case 'older adults':
    case 'hot room':
      if (amidTitle) tellNote(told, { code: 'fact-in-title', fact: fact.kind }, span);
      return crowdFacts[fact.kind];
    case 'room':
      if (amidTitle) tellNote(told, { code: 'fact-in-title', fact: fact.room }, span);
      return { room: fact.room };
    case 'moment': {
      const date = dateOnOtherWeekday(fact.moment, now, settings.zone);
      if (date !== undefined) {
        tellProblem(told, line.number, span, { code: 'other-weekday', date });
        return {};
      }
      const startsAt = wallTimeOf(fact.moment, now, settings.zone);
      if (startsAt === undefined) tellProblem(told, line.number, span, { code: 'moment-past' });
      if (startsAt === undefined) return {};
      if (fact.moment.day === undefined) tellNote(told, { code: 'next-such-time', startsAt }, span);
      return { startsAt };
    }
  }
}

const crowdFacts = {
  beginners: { beginners: true },
  'older adults': { olderAdults: true },
  'hot room': { hotRoom: true },
} as const;
