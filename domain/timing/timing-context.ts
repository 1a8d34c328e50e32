import type { Context } from '../context.ts';

/** What timing needs of the context. */
export type TimingContext = Pick<Context, 'catalogue' | 'settings'>;
