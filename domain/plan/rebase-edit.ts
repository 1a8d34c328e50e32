import { labelsByLine } from './labels.ts';
import type { Plan } from './plan.ts';

/**
 * An edit written with the labels of one version, in the labels of another: lines keep their ids while
 * letters move. Undefined where a line it names stands in the later version no more.
 */
export function rebaseEdit(edit: string, madeOn: Plan, current: Plan): string | undefined {
  const idByLabel = new Map([...labelsByLine(madeOn)].map(([id, label]) => [label, id] as const));
  const labelNow = labelsByLine(current);
  const words = edit.split(/(\s+)/).map((word) => {
    const id = idByLabel.get(word);
    return id === undefined ? word : labelNow.get(id);
  });
  return words.some((word) => word === undefined) ? undefined : words.join('');
}
