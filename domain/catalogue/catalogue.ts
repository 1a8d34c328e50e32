import type { Move, MoveId } from './move.ts';
import { antiExtension } from './moves/anti-extension.ts';
import { antiRotation } from './moves/anti-rotation.ts';
import { carries } from './moves/carries.ts';
import { hinges } from './moves/hinges.ts';
import { horizontalPulls } from './moves/horizontal-pulls.ts';
import { horizontalPushes } from './moves/horizontal-pushes.ts';
import { isolationArms } from './moves/isolation-arms.ts';
import { isolationLegs } from './moves/isolation-legs.ts';
import { jumps } from './moves/jumps.ts';
import { lateralFlexion } from './moves/lateral-flexion.ts';
import { locomotion } from './moves/locomotion.ts';
import { lunges } from './moves/lunges.ts';
import { mobility } from './moves/mobility.ts';
import { rotation } from './moves/rotation.ts';
import { squats } from './moves/squats.ts';
import { trunkFlexion } from './moves/trunk-flexion.ts';
import { verticalPulls } from './moves/vertical-pulls.ts';
import { verticalPushes } from './moves/vertical-pushes.ts';

/** All moves a reader may meet. `edition` is kept with each stored plan version. */
export type Catalogue = {
  readonly edition: string;
  /** What is offered, named and searched. */
  readonly moves: readonly Move[];
  /** These and the retired ones: whatever a stored plan may name. */
  readonly byId: ReadonlyMap<MoveId, Move>;
  /** A studio's own names for moves; they win over the trade's. */
  readonly ownNames?: ReadonlyMap<string, MoveId>;
};

const moves: readonly Move[] = [
  ...squats,
  ...hinges,
  ...lunges,
  ...horizontalPushes,
  ...verticalPushes,
  ...horizontalPulls,
  ...verticalPulls,
  ...carries,
  ...trunkFlexion,
  ...antiExtension,
  ...antiRotation,
  ...rotation,
  ...lateralFlexion,
  ...isolationArms,
  ...isolationLegs,
  ...jumps,
  ...locomotion,
  ...mobility,
];

export const catalogue: Catalogue = {
  edition: '2026.1',
  moves,
  byId: new Map(moves.map((move) => [move.id, move])),
};
