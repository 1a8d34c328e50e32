/** Whole repetitions in a window: floor(seconds ÷ seconds per rep). */
export function repsIn(seconds: number, secondsARep: number): number {
  return Math.floor(seconds / secondsARep);
}
