/** Ways a call can go wrong on the wire, for tests. */
type FaultKind = '429' | '500' | 'hang' | 'lost-answer' | 'broken-json';

export type Faults = {
  /** The next `count` calls of the method (`*`: of any) go wrong in this way. */
  readonly failNext: (method: string, kind: FaultKind, count?: number) => void;
  readonly take: (method: string) => FaultKind | undefined;
  readonly clear: () => void;
};

export const createFaults = (): Faults => {
  const waiting: { readonly method: string; readonly kind: FaultKind; left: number }[] = [];
  return {
    failNext: (method, kind, count = 1) => {
      waiting.push({ method, kind, left: count });
    },
    take: (method) => {
      const fault = waiting.find((each) => each.left > 0 && (each.method === method || each.method === '*'));
      if (fault === undefined) return undefined;
      fault.left -= 1;
      return fault.kind;
    },
    clear: () => {
      waiting.length = 0;
    },
  };
};
