import type { PlanFacts } from '../../../domain/plan/plan.ts';
import type { Change } from '../../../domain/shorthand/changes-between.ts';

/** One changed thing, before → after, in the words of the shorthand. */
export function changeText(change: Change): string {
  switch (change.kind) {
    case 'fact':
      return factText(change.fact, change.before, change.after);
    case 'block':
      return `${change.before} → ${change.after}`;
    case 'block-added':
      return `added: ${withLetters(change.text, change.letters)}`;
    case 'block-dropped':
      return `dropped: ${withLetters(change.text, change.letters)}`;
    case 'items':
      return `${change.block}: ${change.before || 'nothing listed'} → ${change.after || 'nothing listed'}`;
    case 'letter':
      return `${change.label}: ${change.before} → ${change.after}`;
    case 'letter-added':
      return `${change.label} added: ${change.text}`;
    case 'letter-dropped':
      return `${change.label} dropped: ${change.text}`;
    case 'letters-moved':
      return change.letters.map(({ from, to }) => `${from} is now ${to}`).join(', ');
    case 'side-dropped':
      return `${change.label}: ${change.sides} left out, the new move has no use for it`;
    case 'side-assumed':
      return `${change.label}: ${change.sides}, half the time each side`;
  }
}

const factNames: Readonly<Record<keyof PlanFacts, string>> = {
  title: 'title',
  slotSeconds: 'slot',
  level: 'level',
  people: 'people',
  focus: 'focus',
  aim: 'aim',
  beginners: 'beginners',
  olderAdults: 'older adults',
  hotRoom: 'hot room',
  startsAt: 'time',
  room: 'room',
  kit: 'kit',
};

function factText(fact: keyof PlanFacts, before: string | undefined, after: string | undefined): string {
  return `${factNames[fact]}: ${before ?? 'not said'} → ${after ?? 'not said'}`;
}

function withLetters(
  text: string,
  letters: readonly { readonly label: string; readonly text: string }[],
): string {
  return [text, ...letters.map(({ label, text: move }) => `${label} ${move}`)].join(' · ');
}
