import { useState } from 'preact/hooks';
import type { FormValues } from '../form-values.ts';
import type { GestureResult } from '../page-answers.ts';
import { askServer, type Surface } from './ask-server.ts';
import { type Form, withValue } from './form.ts';

export type FilledForm = Form & {
  /** Runs a gesture of the whole form and shows what came of it. */
  readonly run: (gesture: (values: FormValues) => Promise<GestureResult>) => void;
};

/** The state of the elements of one message, modal or home. */
export const useSurface = (as: string, on: Surface, tell: (message: string) => void): FilledForm => {
  const [values, setValues] = useState<FormValues>({});
  const [errors, setErrors] = useState<Readonly<Record<string, string>>>({});
  const [isBusy, setBusy] = useState(false);

  const run = async (gesture: Promise<GestureResult>) => {
    setBusy(true);
    const result = await gesture;
    setBusy(false);
    setErrors(result.kind === 'field-errors' ? result.errors : {});
    if (result.kind === 'failed') tell(result.message);
  };

  return {
    values,
    errors,
    isBusy,
    change: (blockId, actionId, value) => {
      setValues((before) => withValue(before, blockId, actionId, value));
      const { [blockId]: _mended, ...others } = errors;
      setErrors(others);
    },
    act: (blockId, actionId, value) => {
      const filled = value === undefined ? values : withValue(values, blockId, actionId, value);
      void run(
        askServer.act({
          as,
          on,
          blockId,
          actionId,
          ...(value === undefined ? {} : { value }),
          values: filled,
        }),
      );
    },
    run: (gesture) => void run(gesture(values)),
  };
};
