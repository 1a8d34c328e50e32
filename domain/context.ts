import type { Catalogue } from './catalogue/catalogue.ts';
import type { KitItem } from './catalogue/kit.ts';
import type { MoveId } from './catalogue/move.ts';
import type { Plan } from './plan/plan.ts';
import type { Settings } from './settings.ts';

/**
 * What every stage may know beside the plan. `now` is an ISO 8601 instant; the first three are enough for
 * `reportOnClass`, the rest sharpens single checks.
 */
export type Context = {
  readonly catalogue: Catalogue;
  readonly settings: Settings;
  readonly now: string;
  /** Keeps line ids where lines of this earlier reading stand again. */
  readonly previousPlan?: Plan;
  /** Moves this studio has taught before; absent where not known. */
  readonly movesTaught?: ReadonlySet<MoveId>;
  /** The plan is being sent for review: open lines must be filled. */
  readonly sendingForReview?: boolean;
  /** Finding codes dismissed for this plan. */
  readonly dismissed?: ReadonlySet<string>;
  /** How hard the class was for the group, the instructor's estimate, 0–10. */
  readonly groupEffort?: number;
  /** Other classes whose muscles matter for the 48-hour rule. */
  readonly neighbours?: readonly NeighbourClass[];
  /** Pieces of the room's kit that other classes have out at the same time; absent where not known. */
  readonly kitInUse?: Readonly<Partial<Record<KitItem, number>>>;
  /** The class taught last in the same slot: its moves, for the studio's wish to keep or vary main lifts. */
  readonly lastTime?: { readonly moveIds: ReadonlySet<MoveId> };
};

/** A class within 48 hours that shares a slot habit. */
type NeighbourClass = {
  readonly title: string;
  readonly instant: string;
  readonly setsByMuscle: Readonly<Record<string, number>>;
};
