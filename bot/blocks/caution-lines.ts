import { type Caution, cautions } from '../../domain/catalogue/move.ts';
import { labelledLetters } from '../../domain/plan/labels.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import type { Show } from './show.ts';

/** Each caution of a class once, behind the letters of the moves it goes with. */
export function cautionLines(plan: Plan, { words, catalogue }: Show): readonly string[] {
  const labels = new Map<Caution, string[]>();
  for (const { label, move } of labelledLetters(plan).flatMap(({ moves }) => moves)) {
    const known = move.choice.kind === 'move' ? catalogue.byId.get(move.choice.moveId) : undefined;
    for (const caution of known?.cautions ?? []) labels.set(caution, [...(labels.get(caution) ?? []), label]);
  }
  return cautions.flatMap((caution) => {
    const found = labels.get(caution);
    return found === undefined ? [] : [`*${found.join(' ')}* ${words.caution[caution]}`];
  });
}
