/**
 * Where `typed` differs from `wanted` by one slip of the finger (one character missing, doubled, wrong,
 * or swapped with its neighbour): the place in `wanted`, or undefined where it is no such slip.
 */
export const slipPlace = (typed: string, wanted: string): number | undefined => {
  if (typed === wanted || Math.abs(typed.length - wanted.length) > 1) return undefined;
  let at = 0;
  while (at < wanted.length && typed[at] === wanted[at]) at += 1;
  const restIsEqual = (fromTyped: number, fromWanted: number): boolean =>
    typed.slice(fromTyped) === wanted.slice(fromWanted);
  if (typed.length < wanted.length) return restIsEqual(at, at + 1) ? at : undefined;
  if (typed.length > wanted.length) {
    const isDoubled = at > 0 && typed[at] === typed[at - 1];
    return isDoubled && restIsEqual(at + 1, at) ? at - 1 : undefined;
  }
  if (restIsEqual(at + 1, at + 1)) return at;
  const isSwapped = typed[at] === wanted[at + 1] && typed[at + 1] === wanted[at];
  return isSwapped && restIsEqual(at + 2, at + 2) ? at : undefined;
};
