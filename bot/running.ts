/** What main holds of whatever it started. */
export type Running = {
  /** For the person at the terminal. */
  readonly lines: readonly string[];
  readonly stop: () => Promise<void>;
};

/** The start can't go on for a reason that a person can mend; told without a stack. */
export class StartRefused extends Error {
  readonly problems: readonly string[];

  constructor(problems: readonly string[]) {
    super(problems.join('\n'));
    this.name = 'StartRefused';
    this.problems = problems;
  }
}
