const endAlike = (typed: string, fromTyped: number, wanted: string, fromWanted: number): boolean => {
  if (typed.length - fromTyped !== wanted.length - fromWanted) return false;
  for (let offset = 0; fromWanted + offset < wanted.length; offset += 1) {
    if (typed[fromTyped + offset] !== wanted[fromWanted + offset]) return false;
  }
  return true;
};

/**
 * Where `typed` differs from `wanted` by one slip of the finger (one character missing, doubled, wrong,
 * or swapped with its neighbour): the place in `wanted`, or undefined where it is no such slip.
 */
export const slipPlace = (typed: string, wanted: string): number | undefined => {
  if (typed === wanted) return undefined;
  let at = 0;
  while (at < wanted.length && typed[at] === wanted[at]) at += 1;
  const isMissing = endAlike(typed, at, wanted, at + 1);
  const isWrong = endAlike(typed, at + 1, wanted, at + 1);
  const isSwapped =
    typed[at] === wanted[at + 1] && typed[at + 1] === wanted[at] && endAlike(typed, at + 2, wanted, at + 2);
  if (isMissing || isWrong || isSwapped) return at;
  const isDoubled = at > 0 && typed[at] === typed[at - 1] && endAlike(typed, at + 1, wanted, at);
  return isDoubled ? at - 1 : undefined;
};
