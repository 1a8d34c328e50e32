import type { EnergyRow } from './move.ts';

/**
 * Rows of the 2024 Adult Compendium of Physical Activities (Herrmann SD et al., J Sport Health Sci
 * 2024;13:6–12), MET as printed. Codes were reused between editions, so edition and code stay together.
 */
export const energyRows = {
  'calisthenics, vigorous': { edition: 2024, code: '02020', met: 7.5 },
  'calisthenics, moderate': { edition: 2024, code: '02022', met: 3.8 },
  'calisthenics, light': { edition: 2024, code: '02024', met: 2.8 },
  'calisthenics, up and down from the floor': { edition: 2024, code: '02030', met: 3.5 },
  'circuit, body-weight': { edition: 2024, code: '02032', met: 6.0 },
  'circuit, light': { edition: 2024, code: '02034', met: 3.5 },
  'circuit, moderate': { edition: 2024, code: '02035', met: 5.0 },
  'circuit, kettlebells, vigorous': { edition: 2024, code: '02040', met: 7.5 },
  'free weights, vigorous': { edition: 2024, code: '02050', met: 6.0 },
  'squats and deadlifts': { edition: 2024, code: '02052', met: 5.0 },
  'resistance, many exercises': { edition: 2024, code: '02054', met: 3.5 },
  'resistance, supersets': { edition: 2024, code: '02055', met: 5.8 },
  'body-weight, general': { edition: 2024, code: '02056', met: 3.0 },
  'body-weight, high intensity': { edition: 2024, code: '02057', met: 6.5 },
  'kettlebell swings': { edition: 2024, code: '02058', met: 9.8 },
  'stretching, mild': { edition: 2024, code: '02101', met: 2.3 },
  'intervals, moderate': { edition: 2024, code: '02210', met: 7.0 },
  'intervals, vigorous': { edition: 2024, code: '02214', met: 11.0 },
} as const satisfies Readonly<Record<string, EnergyRow>>;
