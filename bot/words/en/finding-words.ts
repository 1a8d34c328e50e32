import type { KitItem } from '../../../domain/catalogue/kit.ts';
import type { MoveId } from '../../../domain/catalogue/move.ts';
import type { Finding } from '../../../domain/checks/check-plan.ts';
import type { RuleSource, Severity } from '../../../domain/checks/finding.ts';
import type { TiredPart } from '../../../domain/checks/part-in-a-row.ts';
import type { LineId } from '../../../domain/plan/plan.ts';
import { lengthText, setsText } from './card-words.ts';

/** Stands on every plan, sheet and report. */
export const standingLine =
  'Planning help only, not medical advice. Screening, clearance, group size, first aid and the emergency plan follow your local rules and qualified staff. Chest pain or pressure, faintness, confusion, irregular heartbeat, unusual breathlessness or sudden sharp pain: stop that person and start your emergency plan.';

export function severityText(severity: Severity): string {
  switch (severity) {
    case 'must fix':
      return 'Must fix';
    case 'look at':
      return 'Look at';
    case 'good to know':
      return 'Good to know';
  }
}

/** What was found in one short sentence for a phone, and why it matters, with its source. */
export function findingText(
  finding: Finding,
  labels: ReadonlyMap<LineId, string>,
  moveName: (id: MoveId) => string,
): { readonly sentence: string; readonly why: string } {
  const label = (line: LineId): string => labels.get(line) ?? '';
  const all = listed(finding.lines.flatMap((line) => labels.get(line) ?? []));
  const told = (sentence: string, why: string): { readonly sentence: string; readonly why: string } => ({
    sentence,
    why: `${why} (${sourceText(finding.source)}).`,
  });
  switch (finding.code) {
    case 'over-teaching-time':
      return told(
        `${lengthText(finding.overSeconds)} over the ${lengthText(finding.teachingSeconds)} there are.`,
        'The next class starts on time, and the cool-down is what gets lost',
      );
    case 'sides-unequal':
      return told(
        `${moveName(finding.moveId)}: right ${sideText(finding.right, finding.unit)}, left ${sideText(finding.left, finding.unit)}.`,
        'Both sides get the same work over a class',
      );
    case 'kit-short':
      if (finding.isUnlisted) {
        return told(
          `${all}: ${piecesText(finding.item, finding.needPieces)} needed, not on the kit line.`,
          'What is not on the line is not laid out',
        );
      }
      return told(
        `${all}: ${piecesText(finding.item, finding.needPieces)} needed, the room has ${finding.havePieces}${shareText(finding)}.`,
        'Someone would stand without kit',
      );
    case 'kit-in-use':
      return told(
        `${all}: ${piecesText(finding.item, finding.needPieces)} needed, ${finding.outPieces} of ${finding.havePieces} still out${shareText(finding)}.`,
        'Another class has that kit until later',
      );
    case 'over-room-capacity':
      return told(
        `${finding.people} people, the room is posted for ${finding.capacity}: take ${finding.capacity} (${finding.capacity} now), or a larger room.`,
        'The capacity posted under your local rules comes before any plan',
      );
    case 'open-line-left':
      return told(
        `${all} ${finding.count === 1 ? 'is' : 'are'} still open: write swap ${label(finding.lines[0] ?? '')} and a move.`,
        'A reviewer can only approve moves that are named',
      );
    case 'lying-beside-throw':
      return told(
        `${label(finding.lying)} lies down next to the swing or throw of ${label(finding.throwing)}.`,
        'A weight that slips flies low and far',
      );
    case 'out-of-step-throw':
      return told(
        `${all}: someone may lie next to a swing or throw.`,
        'At their own pace people get out of step; leave a lane between them',
      );
    case 'ballistic-without-rest':
      return told(
        `${all}: fast or technical work with no rest before or after.`,
        'At this level fast moves need people fresh',
      );
    case 'lower-back-three-in-a-row':
      return told(
        `${all}: the lower back three times in a row.`,
        'At this level the back rounds when it tires',
      );
    case 'same-part-three-in-a-row':
      return told(
        `${all}: ${partText(finding.part)} three times in a row.`,
        'Form goes where one part gets no break',
      );
    case 'no-warm-up':
      return told(
        'The work starts without a warm-up.',
        `${lengthText(finding.leastSeconds)} is the least here; 5 to 10 minutes are advised`,
      );
    case 'short-warm-up':
      return told(
        `Warm-up ${lengthText(finding.seconds)}, the least here is ${lengthText(finding.leastSeconds)}.`,
        '5 to 10 minutes are advised',
      );
    case 'no-cool-down':
      return told(
        'The class ends without a cool-down.',
        `${lengthText(finding.leastSeconds)} is the least here; 5 to 10 minutes are advised`,
      );
    case 'short-cool-down':
      return told(
        `Cool-down ${lengthText(finding.seconds)}, the least here is ${lengthText(finding.leastSeconds)}.`,
        '5 to 10 minutes are advised',
      );
    case 'early-jumps':
      return told(
        `${all}: jumps in the first ${lengthText(finding.freeSeconds)} of work.`,
        'Calves and knees take landings better a few minutes in',
      );
    case 'warm-up-misses-patterns':
      return told(
        'The warm-up has none of the first block in it: add one of its moves in your message.',
        'A lighter round of what comes first prepares best',
      );
    case 'time-unused':
      return told(
        `${lengthText(finding.unusedSeconds)} of ${lengthText(finding.teachingSeconds)} has no use: spare, or more cool-down than needed.`,
        'There is room for a round or a longer cool-down',
      );
    case 'no-break-between-blocks':
      return told(
        `Nothing between ${all} and the next block.`,
        'People need a moment to breathe, drink and hear what comes',
      );
    case 'late-starts':
      return told(
        `${label(finding.letter)}: the change takes ${finding.lateSecondsABout} s of each ${finding.boutSeconds} s.`,
        'Kit, position and sides take longer than the gap gives',
      );
    case 'same-prime-mover':
      return told(
        `${label(finding.first)} and ${label(finding.second)}: ${finding.muscle} twice in a row.`,
        'The second move gets tired muscles; say burnout where that is the aim',
      );
    case 'many-ups-and-downs':
      return told(
        `${all}: ${finding.aMinute} ups and downs a minute.`,
        'Floor work kept together costs fewer late starts and less dizziness',
      );
    case 'front-to-back-flips':
      return told(
        `${all}: ${finding.flips} turns between front and back.`,
        'Moves on one side of the body, kept together, save time',
      );
    case 'floor-crowded':
      return told(
        `${finding.people} people on ${finding.areaSquareMetres} m², this work needs ${finding.squareMetresAPerson} m² each: room for ${Math.floor(finding.areaSquareMetres / finding.squareMetresAPerson)}.`,
        'Clear ways and room for arms and weights',
      );
    case 'two-weights-from-one-pair':
      return told(
        `${label(finding.first)} and ${label(finding.second)}: two weights, no time to change.`,
        'Back to back, people keep what they hold',
      );
    case 'above-level':
      return told(
        `${all}: above level ${finding.level}, no easier option named${optionsText(finding.options.map(({ moveId }) => moveName(moveId)))}.`,
        'Everyone gets a way to do each line',
      );
    case 'all-out-too-long':
      return told(
        `${all}: ${lengthText(finding.seconds)} all out, ${lengthText(finding.mostSeconds)} is the most at this level.`,
        'Muscle damage is rare and comes with work people are not used to; the limit is common practice',
      );
    case 'loaded-without-break':
      return told(
        `${all}: ${lengthText(finding.seconds)} with weights and no rest.`,
        `At this level a break by ${lengthText(finding.mostSeconds)} keeps form and dose in hand`,
      );
    case 'short-rest-for-heavy-work':
      return told(
        `${label(finding.line)}: heavy, back after ${finding.restSeconds} s.`,
        `Heavy compound work keeps its load with ${lengthText(finding.leastSeconds)} or more`,
      );
    case 'new-move-out-of-sight':
      return told(
        `${all}: new here, and starts while people lie down: explain it before its block.`,
        'Nobody sees it shown from the floor',
      );
    case 'new-move-not-explained':
      return told(
        `${all}: new here, with no explaining before its block: explain ${finding.explainSeconds}.`,
        `A new move takes about ${finding.explainSeconds} s to show`,
      );
    case 'many-new-moves':
      return told(
        `${finding.count} moves are new here: keep ${finding.most}, swap the others for known ones.`,
        `Up to ${finding.most} a class can be shown well`,
      );
    case 'station-lengths-unequal':
      return told(
        `${all}: stations of ${finding.shortestSeconds} s and ${finding.longestSeconds} s.`,
        'Groups rotate together, so some would wait',
      );
    case 'two-technical-stations':
      return told(`${all}: technical moves at the same time.`, 'One coach can watch one of them');
    case 'push-pull-uneven':
      return told(
        `Push ${setsText(finding.pushSets)} sets, pull ${setsText(finding.pullSets)}.`,
        'About as much pull as push, where the kit allows it',
      );
    case 'head-down-then-up':
      return told(
        `${all}: head down, then straight up.`,
        'Coming up fast makes some people dizzy; name an option',
      );
    case 'long-on-the-back':
      return told(
        `${all}: ${lengthText(finding.seconds)} on the back.`,
        'Some people need a raised option; name one',
      );
    case 'muscle-trained-lately':
      return told(
        `${listed(finding.muscles)}: hard in ${finding.title} too, within 48 hours.`,
        'Who comes to both gets less than two days between',
      );
    case 'main-lifts-against-wish':
      return finding.wish === 'keep'
        ? told(
            `Last time's main lifts are gone: ${listed(finding.moveIds.map(moveName))}.`,
            'Your studio keeps main lifts for some weeks',
          )
        : told(
            `Main lifts as last time: ${listed(finding.moveIds.map(moveName))}.`,
            'Your studio varies main lifts',
          );
    case 'no-time-to-wipe':
      return told(
        `${all}: ${finding.restSeconds} s to wipe shared kit.`,
        `About ${finding.wipeSeconds} s do`,
      );
    case 'weights-underfoot':
      return told(
        `${all}: say where to park the weights.`,
        'People jump or travel straight after putting them down',
      );
    case 'bands-to-check':
      return told(`${all}: check bands and straps, and their anchors.`, 'Worn ones snap without warning');
  }
}

/** What to do where no edit mends it. */
function shareText({ mend }: Pick<Finding, 'mend'>): string {
  return mend === undefined ? ': swap a move, or go in pairs' : '';
}

function sideText(amount: number, unit: 'seconds' | 'reps'): string {
  return unit === 'seconds' ? lengthText(amount) : `${amount} reps`;
}

function sourceText(source: RuleSource): string {
  return source === 'common practice' ? 'common practice' : source.published;
}

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}

function optionsText(names: readonly string[]): string {
  return names.length === 0 ? '' : ` (${[...new Set(names)].join(', ')})`;
}

function partText(part: TiredPart): string {
  switch (part) {
    case 'lower back':
      return 'the lower back';
    case 'grip':
      return 'the grip';
    case 'wrists':
      return 'the wrists';
    case 'shoulders':
      return 'the shoulders';
  }
}

function piecesText(item: KitItem, pieces: number): string {
  if (pieces === 1) return `1 ${item}`;
  const plural = item === 'bench' || item === 'box' ? `${item}es` : `${item}s`;
  return `${pieces} ${plural}`;
}
