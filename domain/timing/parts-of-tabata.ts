import type { TabataBlock } from '../plan/plan.ts';
import type { Part } from './part.ts';
import { movesInRound } from './work-of-letter.ts';
import { workOfMove } from './work-of-move.ts';

/** Tabata I et al., Med Sci Sports Exerc 1996;28:1327–30: 8 bouts of 20 s, 10 s between. */
const tabataProtocol = { bouts: 8, workSeconds: 20, restSeconds: 10 } as const;

/** Each time starts with the first move and ends in its last 10 s. */
export function partsOfTabata(block: TabataBlock): readonly Part[] {
  const bouts = boutsOfOneTime(block);
  const roundsATime = bouts.at(-1)?.round ?? 0;
  return Array.from({ length: block.times }, (_, index) => index).flatMap((time) => {
    const parts = bouts.flatMap(({ letter, move, round }): readonly Part[] => {
      const place = { letter, round: round + time * roundsATime };
      return [
        ...workOfMove(move, tabataProtocol.workSeconds, place),
        { ...place, kind: 'rest', seconds: tabataProtocol.restSeconds },
      ];
    });
    const between = time < block.times - 1 ? (block.betweenSeconds ?? 0) : 0;
    return [...parts, { kind: 'between-rounds' as const, seconds: between }];
  });
}

function boutsOfOneTime(block: TabataBlock) {
  const rounds = Array.from({ length: tabataProtocol.bouts }, (_, index) => index + 1);
  return rounds
    .flatMap((round) =>
      block.letters.flatMap((letter) =>
        movesInRound(letter, round).map((move) => ({ letter: letter.id, move, round })),
      ),
    )
    .slice(0, tabataProtocol.bouts);
}
