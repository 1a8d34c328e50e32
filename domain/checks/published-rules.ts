import type { RuleSource } from './finding.ts';

/** The publications that findings name, each with what it says in `domain/settings.ts` beside its limit. */
export const publishedRules = {
  warmUpAndCoolDown: { published: 'ACSM' },
  floorSpace: { published: 'trade body, 2010' },
  restBetweenSets: { published: 'ACSM, Ratamess 2009' },
  daysBetween: { published: 'Garber 2011' },
  rhabdomyolysis: { published: 'Rawson 2017' },
} as const satisfies Readonly<Record<string, RuleSource>>;
