import type { Caution } from '../../../domain/catalogue/move.ts';

/** What to mind with a move; said once a class. */
export const cautionWords: Readonly<Record<Caution, string>> = {
  'keep clear of the swing': 'keep clear of the swing',
  'brace, keep the back long': 'brace, keep the back long',
  'land softly': 'land softly',
  'wrists: use fists or handles': 'wrists: fists or handles',
  'neck long, no pulling on the head': 'neck long, no pulling on the head',
  'breathe out on effort': 'breathe out on effort',
  'check bands and anchors': 'check bands and anchors',
  'loaded twist or bend: offer a straight-back option': 'loaded twist or bend: offer a straight-back option',
  'flat on the back: offer a raised option': 'flat on the back: offer a raised option',
  'head down: come up slowly': 'head down: come up slowly',
  'knees: work in a comfortable range': 'knees in a comfortable range',
  'shoulders: work in a comfortable range': 'shoulders in a comfortable range',
};
