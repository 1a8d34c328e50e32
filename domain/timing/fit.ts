/** One way to make the class fit: lines of the edit language, and what they do. */
export type FitProposal = {
  readonly edit: string;
  /** What it changes: kinds differ among the proposals told. */
  readonly kind: 'rounds' | 'letter' | 'work' | 'rest' | 'warm-up' | 'cool-down' | 'slot';
  /** Seconds of work it takes (negative) or adds. */
  readonly workChangeSeconds: number;
  /** Length after it; always the teaching time for a proposal, less for a late-start cut. */
  readonly totalSeconds: number;
};

/** A ready cut for a class that starts late by `lateSeconds`. */
export type LateStartCut = { readonly lateSeconds: number; readonly proposal?: FitProposal };

/** Against the teaching time: `spareSeconds` is negative where the class is over. */
export type Fit = {
  readonly teachingSeconds: number;
  readonly totalSeconds: number;
  readonly spareSeconds: number;
  readonly proposals: readonly FitProposal[];
  readonly lateStartCuts: readonly LateStartCut[];
};
