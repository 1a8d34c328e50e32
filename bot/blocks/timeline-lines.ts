import { hasLetters, isOpenBlock } from '../../domain/plan/blocks-of.ts';
import { labelsByLine } from '../../domain/plan/labels.ts';
import type { LineId, Plan, PlannedMove } from '../../domain/plan/plan.ts';
import { printItems, printMove } from '../../domain/shorthand/print-letter.ts';
import { printBlockLine } from '../../domain/shorthand/print-plan.ts';
import type { Segment } from '../../domain/timing/timeline.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import type { Words } from '../words/words.ts';
import { titleOf } from './draft-card.ts';
import { inertText } from './escape.ts';
import { inSeveral } from './in-several.ts';
import { firstLines } from './limits.ts';
import type { Show } from './show.ts';

/** How a line is written: with the workspace's marks, or as it stands in a file. */
type Style = {
  readonly strong: (text: string) => string;
  readonly clock: (text: string) => string;
  readonly typed: (text: string) => string;
};

const marked: Style = {
  strong: (text) => `*${text}*`,
  clock: (text) => `\`${text}\``,
  typed: inertText,
};
const plain: Style = { strong: (text) => text, clock: (text) => text, typed: (text) => text };

/** The class from its first second to its last, a line a segment. */
export function timelineLines(open: OpenPlan, show: Show, style: Style = marked): readonly string[] {
  const { report } = open;
  if (report.kind !== 'report') return [show.words.flow.fixLinesFirst];
  const labels = labelsByLine(report.plan);
  const moves = movesById(report.plan);
  const nameOf = (id: LineId) => {
    const move = moves.get(id);
    return `${labels.get(id) ?? ''} ${move === undefined ? '' : style.typed(printMove(move, show.catalogue))}`.trim();
  };
  return report.plan.blocks.flatMap((block, place) => {
    const segments = report.timeline.segments.filter((segment) => segment.block === place);
    return [
      style.strong(style.typed(printBlockLine(block))),
      ...segments.map((segment) =>
        segment.kind === 'open' && isOpenBlock(block) && block.items.length > 0
          ? partLine(segment, style.typed(printItems(block.items, show.catalogue)), style, show.words)
          : segmentLine(segment, nameOf, style, show.words),
      ),
    ];
  });
}

/** More messages than this are no answer in a thread. */
const mostMessages = 5;

/** The same in the thread; of a very long class its beginning, and the whole of it as a file. */
export function renderTimeline(open: OpenPlan, show: Show): readonly Message[] {
  const { asks } = show.words;
  const title = titleOf(open.version.plan, show.words);
  const lines = timelineLines(open, show);
  const messages = inSeveral(title, lines, show.words);
  if (messages.length <= mostMessages) return messages;
  const beginning = firstLines(lines, mostOfBeginning, asks.restInFile);
  const content = timelineLines(open, show, plain).join('\n').concat('\n');
  return [
    { text: [title, ...beginning].join('\n') },
    {
      text: asks.fileNotPosted,
      file: {
        name: `timeline-v${open.record.currentVersion}.txt`,
        title: asks.wholeTimeline(lines.length),
        content,
      },
    },
  ];
}

/** Characters of a long timeline that stand in the thread, beside its title. */
const mostOfBeginning = 3_000;

function segmentLine(segment: Segment, nameOf: (id: LineId) => string, style: Style, words: Words): string {
  if (segment.kind !== 'work')
    return partLine(segment, words.segment(segment.kind, segment.also), style, words);
  const lines = segment.sharedBy ?? (segment.move === undefined ? [] : [segment.move]);
  const what = lines.map(nameOf).join(' · ');
  // Moves that alternate say so in their own words, or by their nature.
  const side =
    segment.side === undefined || segment.side === 'alternating' ? '' : `, ${words.side(segment.side)}`;
  const round = segment.round === undefined ? '' : ` · ${words.round(segment.round)}`;
  return `${partLine(segment, `${style.strong(what)}${side}`, style, words)}${round}`;
}

/** When a stretch begins, what it is, and how long. */
function partLine(
  { startSeconds, endSeconds }: Segment,
  what: string,
  { clock }: Style,
  words: Words,
): string {
  return `${clock(words.length(startSeconds).padStart(6))}  ${what}  ${words.length(endSeconds - startSeconds)}`;
}

function movesById(plan: Plan): ReadonlyMap<LineId, PlannedMove> {
  const all = plan.blocks.filter(hasLetters).flatMap(({ letters }) => letters.flatMap(({ moves }) => moves));
  return new Map(all.map((move) => [move.id, move]));
}
