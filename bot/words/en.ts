import { faultWords } from './en/fault-words.ts';

/** Every sentence for people in English, by stage. */
export const english = { faults: faultWords } as const;
