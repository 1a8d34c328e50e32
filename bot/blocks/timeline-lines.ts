import { hasLetters } from '../../domain/plan/blocks-of.ts';
import { labelsByLine } from '../../domain/plan/labels.ts';
import type { LineId, Plan, PlannedMove } from '../../domain/plan/plan.ts';
import { printMove } from '../../domain/shorthand/print-letter.ts';
import { printBlockLine } from '../../domain/shorthand/print-plan.ts';
import type { Segment } from '../../domain/timing/timeline.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { type Show, titleOf } from './draft-card.ts';
import { inertText } from './escape.ts';
import { inSeveral } from './in-several.ts';

/** The class from its first second to its last, a line a segment. */
export function timelineLines(open: OpenPlan, show: Show): readonly string[] {
  const { report } = open;
  if (report.kind !== 'report') return [show.words.flow.fixLinesFirst];
  const labels = labelsByLine(report.plan);
  const moves = movesById(report.plan);
  return report.plan.blocks.flatMap((block, place) => {
    const segments = report.timeline.segments.filter((segment) => segment.block === place);
    return [
      `*${inertText(printBlockLine(block))}*`,
      ...segments.map((segment) => segmentLine(segment, labels, moves, show)),
    ];
  });
}

/** The same in the thread, in as many messages as it takes. */
export function renderTimeline(open: OpenPlan, show: Show): readonly Message[] {
  return inSeveral(titleOf(open.version.plan, show.words), timelineLines(open, show), show.words);
}

function segmentLine(
  segment: Segment,
  labels: ReadonlyMap<LineId, string>,
  moves: ReadonlyMap<LineId, PlannedMove>,
  show: Show,
): string {
  const { words } = show;
  const from = `\`${words.length(segment.startSeconds).padStart(6)}\``;
  const long = words.length(segment.endSeconds - segment.startSeconds);
  const lines = segment.sharedBy ?? (segment.move === undefined ? [] : [segment.move]);
  const what = lines
    .map((id) => {
      const move = moves.get(id);
      return `${labels.get(id) ?? ''} ${move === undefined ? '' : inertText(printMove(move, show.catalogue))}`.trim();
    })
    .join(' · ');
  const side = segment.side === undefined ? '' : `, ${words.side(segment.side)}`;
  const round =
    segment.kind === 'work' && segment.round !== undefined ? ` · ${words.round(segment.round)}` : '';
  return segment.kind === 'work'
    ? `${from}  *${what}*${side}  ${long}${round}`
    : `${from}  ${words.segment(segment.kind, segment.also)}  ${long}`;
}

function movesById(plan: Plan): ReadonlyMap<LineId, PlannedMove> {
  const all = plan.blocks.filter(hasLetters).flatMap(({ letters }) => letters.flatMap(({ moves }) => moves));
  return new Map(all.map((move) => [move.id, move]));
}
