import type { english } from './en.ts';

/** All wording of one language; English sets the shape. */
export type Words = typeof english;
