import type { Load } from '../load/load.ts';
import type { Plan } from '../plan/plan.ts';
import type { Fit } from '../timing/fit.ts';
import type { Timeline } from '../timing/timeline.ts';
import type { Turn } from './turn.ts';

/** What a check looks at. */
export type CheckSubject = {
  readonly plan: Plan;
  readonly timeline: Timeline;
  readonly load: Load;
  readonly fit: Fit;
  /** Laid out once for all checks; a check alone lays out its own. */
  readonly turns?: readonly Turn[];
};
