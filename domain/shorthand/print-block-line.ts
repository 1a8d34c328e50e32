import { isOpenBlock, isTimeBlock } from '../plan/blocks-of.ts';
import { clockText } from '../plan/clock-text.ts';
import type {
  Block,
  Interval,
  LadderBlock,
  LetteredBlock,
  OpenBlock,
  RoundsBlock,
  TimeBlock,
} from '../plan/plan.ts';
import { rungsBetween } from './blocks/rungs-between.ts';

/** A block's own line, without what is listed or lettered below it: `circuit x3, 40/20`. */
export function printBlockLine(block: Block): string {
  if (isOpenBlock(block)) return printOpenLine(block);
  if (isTimeBlock(block)) return printTimeLine(block);
  return [numbersOf(block), ...extrasOf(block)].filter((words) => words !== '').join(', ');
}

function named(word: string, { name }: { readonly name?: string }): string {
  return name === undefined ? word : `${word} (${name})`;
}

function printOpenLine(block: OpenBlock): string {
  const length = block.length.kind === 'fixed' ? clockText(block.length.seconds) : 'to the end';
  return `${named(block.kind, block)} ${length}`;
}

function printTimeLine(block: TimeBlock): string {
  const { seconds } = block;
  const unit = seconds > 0 && seconds < 5 ? 's' : '';
  return `${named(block.kind, block)} ${seconds}${unit}${block.explain ? ', explain' : ''}`;
}

function numbersOf(block: LetteredBlock): string {
  const word = named(block.kind, block);
  switch (block.kind) {
    case 'circuit':
    case 'straight':
    case 'stations':
    case 'finisher':
      return roundsNumbers(block, word);
    case 'emom': {
      const minutes = block.intervalSeconds === 60;
      const numbers = minutes
        ? `${word} ${block.intervals}`
        : `every ${clockText(block.intervalSeconds)} x${block.intervals}${block.name === undefined ? '' : ` (${block.name})`}`;
      return block.workSeconds === undefined ? numbers : `${numbers}, ${block.workSeconds} work`;
    }
    case 'tabata': {
      const times = block.times === 1 ? '' : ` x${block.times}`;
      const between = block.betweenSeconds === undefined ? '' : `, between ${block.betweenSeconds}`;
      return `${word} (8 × 20/10)${times}${between}`;
    }
    case 'amrap':
    case 'for time': {
      const about = block.aboutRounds === undefined ? '' : `, about ${block.aboutRounds} rounds`;
      const length = clockText(block.seconds);
      return block.kind === 'amrap' ? `${word} ${length}${about}` : `${word}, cap ${length}${about}`;
    }
    case 'ladder': {
      const name = block.name === undefined ? '' : ` (${block.name})`;
      const cap = block.capSeconds === undefined ? '' : `, in ${clockText(block.capSeconds)}`;
      return `ladder ${printRungs(block.rungs)}${name}${cap}`;
    }
  }
}

function roundsNumbers(block: RoundsBlock, word: string): string {
  const { kind, rounds, intervals } = block;
  const [first] = intervals;
  const between = block.betweenRoundsSeconds ?? block.betweenLettersSeconds;
  const betweenWord = block.betweenRoundsSeconds === undefined ? 'between letters' : 'between rounds';
  const counted = intervals.length > 1 || (kind === 'finisher' && rounds === 1) ? '' : ` x${rounds}`;
  return [
    `${word}${counted}`,
    intervals.length > 1 ? printLists(intervals) : first === undefined ? '' : printInterval(first),
    block.peoplePerStation === undefined ? '' : `${block.peoplePerStation} each`,
    between === undefined ? '' : `${betweenWord} ${between}`,
  ]
    .filter((words) => words !== '')
    .join(', ');
}

function printInterval({ workSeconds, restSeconds }: Interval): string {
  return workSeconds === 0 ? `rest ${restSeconds}` : `${workSeconds}/${restSeconds}`;
}

function printLists(intervals: readonly Interval[]): string {
  const works = intervals.map(({ workSeconds }) => workSeconds);
  const rests = intervals.map(({ restSeconds }) => restSeconds);
  return `work ${printList(works)}, rest ${printList(rests)}`;
}

function printList(values: readonly number[]): string {
  return values.every((value) => value === values[0]) ? `${values[0]}` : values.join(' ');
}

/** `10 to 1`, `2 to 10 step 2`, `1 to 10 to 1`, else the rungs themselves. */
function printRungs(rungs: LadderBlock['rungs']): string {
  const [first = 0, second = 0] = rungs;
  const last = rungs.at(-1) ?? first;
  const step = Math.abs(second - first);
  const ways = [
    [first, last],
    [first, Math.max(...rungs), last],
    [first, Math.min(...rungs), last],
  ];
  const even = step > 0 && rungs.length > (step === 1 ? 2 : 3);
  const way = even ? ways.find((turns) => `${rungsBetween(turns, step)}` === `${rungs}`) : undefined;
  if (way === undefined) return rungs.join(' ');
  return `${way.join(' to ')}${step === 1 ? '' : ` step ${step}`}`;
}

function extrasOf(block: LetteredBlock): readonly string[] {
  return [
    block.marchInRests ? 'march in the rests' : '',
    block.pairs === undefined ? '' : `in pairs, ${block.pairs}`,
    block.burnout ? 'burnout' : '',
    block.countInSeconds === undefined ? '' : `count-in ${block.countInSeconds}`,
  ];
}
