/** Estimated RPE (0–10) × minutes: Foster C et al., J Strength Cond Res 2001;15:109–15. */
export function sessionLoad(rpe: number, seconds: number): number {
  return (rpe * seconds) / 60;
}

/** Of one week; monotony and strain are absent where all days are alike, for then the SD is zero. */
export type WeekStrain = { readonly load: number; readonly monotony?: number; readonly strain?: number };

/**
 * Monotony is the mean of the seven daily loads ÷ their population SD, rest days 0, to two decimals as it is
 * published; training strain is load × that (Foster C, Med Sci Sports Exerc 1998;30:1164–8).
 */
export function weekStrain(dailyLoads: readonly number[]): WeekStrain {
  const load = dailyLoads.reduce((sum, day) => sum + day, 0);
  const mean = load / dailyLoads.length;
  const variance = dailyLoads.reduce((sum, day) => sum + (day - mean) ** 2, 0) / dailyLoads.length;
  if (!(variance > 0)) return { load };
  const monotony = Math.round((100 * mean) / Math.sqrt(variance)) / 100;
  return { load, monotony, strain: Math.round(load * monotony) };
}
