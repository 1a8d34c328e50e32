/** One exchange between workspace and app, in the order it ended. */
export type TrafficEntry = {
  readonly id: number;
  /** Real time, ISO in UTC. */
  readonly at: string;
  readonly direction: 'to-app' | 'from-app';
  readonly name: string;
  readonly outcome: string;
  readonly isFine: boolean;
  readonly milliseconds: number;
  readonly sent: unknown;
  readonly answered: unknown;
};

export type Traffic = {
  readonly add: (entry: Omit<TrafficEntry, 'id'>) => void;
  readonly list: () => readonly TrafficEntry[];
  readonly clear: () => void;
};

const kept = 400;

/** Keeps the last 400 exchanges; `onAdd` hears of each. */
export const createTraffic = (onAdd: () => void): Traffic => {
  let entries: readonly TrafficEntry[] = [];
  let lastId = 0;
  return {
    add: (entry) => {
      lastId += 1;
      entries = [...entries.slice(1 - kept), { ...entry, id: lastId }];
      onAdd();
    },
    list: () => entries,
    clear: () => {
      entries = [];
    },
  };
};
