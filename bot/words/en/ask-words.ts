import type { Finding } from '../../../domain/checks/check-plan.ts';
import type { RuleSource } from '../../../domain/checks/finding.ts';
import type { Limit } from '../../../domain/plan/options-sheet.ts';
import type { SwapWish } from '../../../domain/plan/swaps-for.ts';
import { checkNames } from './check-names.ts';

export const askWords = {
  swapLead: (wish: SwapWish) => swapLead(wish),
  swap: (label: string, move: string, to: string | undefined) =>
    to === undefined ? `*${label}* ${move}: nothing at hand` : `*${label}* ${move} → ${to}`,
  swapAll: (wish: SwapWish) => (wish === 'no kit' ? 'All of these' : `All ${wish}`),
  noSwaps: (wish: SwapWish) => noSwaps(wish),
  swapsCut: (count: number) => `The first ${count} are buttons; the others work as replies.`,
  optionsButton: 'Options sheet',
  optionsLead: (wanted: readonly Limit[]) => `Options for ${wanted.join(', ')}, naming nobody:`,
  optionsTitle: (limit: Limit) => limit.charAt(0).toUpperCase() + limit.slice(1),
  option: (label: string, move: string, to: string, named: boolean) =>
    `*${label}* ${move} → ${to}${named ? ' (named on the line)' : ''}`,
  noOption: (label: string, move: string) => `*${label}* ${move}: nothing at hand fits, decide on the floor`,
  asPlanned: (labels: readonly string[]) => `As planned: ${labels.join(' ')}`,
  allAsPlanned: 'Every letter can stay as planned.',
  notTaughtYet: 'This class has not been taught yet, so there is no last time to compare with.',
  lastTaught: (title: string, when: string, version: number, outcome: string) =>
    `Last taught: ${title}, ${when}, v${version}${outcome === '' ? '' : ` · ${outcome}`}`,
  sameAsLast: 'Nothing has changed since.',
  changedSinceLast: 'Changed since:',
  nothingFoundLead: 'Looked at, where the class and the settings say enough:',
  nothingFound: (source: RuleSource, codes: readonly Finding['code'][]) =>
    `_${source === 'common practice' ? 'Common practice' : source.published}:_ ${codes.map((code) => checkNames[code]).join(', ')}`,
  page: (page: number, pages: number) => `(${page} of ${pages})`,
  restInFile: (count: number) => `_and ${count} more lines, in the file below_`,
  wholeTimeline: (lines: number) => `The whole timeline, ${lines} lines`,
  fileNotPosted:
    'The whole timeline could not be added as a file. Write timeline again in a while; Full timeline on the card shows the most of it.',
  moreLines: (count: number) => `_and ${count} more lines_`,
} as const;

function swapLead(wish: SwapWish): string {
  switch (wish) {
    case 'easier':
      return 'Easier options, each an edit:';
    case 'harder':
      return 'Harder options, each an edit:';
    case 'no kit':
      return 'Without kit (mats stay), each an edit:';
  }
}

function noSwaps(wish: SwapWish): string {
  switch (wish) {
    case 'easier':
      return 'No letter names a move that could be easier.';
    case 'harder':
      return 'No letter names a move that could be harder.';
    case 'no kit':
      return 'This class needs no kit but mats.';
  }
}
