/** What is said where a class has a plan already, and another one is written for it. */
export const placeWords = {
  has: (when: string, title: string, state: string) => `${when} has *${title}* already (${state}).`,
  notYet: (title: string) => `A class has one plan, so *${title}* is not on the calendar yet. Both are kept.`,
  hasInForm: (title: string) =>
    `That class has ${title} already. Choose another time, or tap Take its place in the thread.`,
  takeButton: 'Take its place',
  otherTimeButton: 'Another time',
  taken: (when: string, title: string, other: string) =>
    `${when} has *${title}* now. *${other}* is kept, off the calendar.`,
  displaced: (when: string, title: string) =>
    `${when} has *${title}* in its place now. This plan is kept, off the calendar.`,
} as const;
