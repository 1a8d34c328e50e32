/** The contract's limits; times in seconds. Past one, the line that goes over is a problem, never cut. */
export const limits = {
  slotSeconds: { least: 300, most: 10_800 },
  planSeconds: { least: 0, most: 10_800 },
  workSeconds: { least: 1, most: 1_800 },
  restSeconds: { least: 0, most: 1_800 },
  rounds: { least: 1, most: 50 },
  blocks: 20,
  lettersABlock: 30,
  movesALetter: 8,
  messageLength: 8_000,
  /** A single length (warm-up, AMRAP, song …) lies inside the longest plan. */
  lengthSeconds: { least: 1, most: 10_800 },
  level: { least: 1, most: 3 },
  people: { least: 1, most: 500 },
  reps: { least: 1, most: 500 },
  rpe: { least: 1, most: 10 },
  weight: { least: 1, most: 500 },
  metres: { least: 1, most: 5_000 },
} as const;
