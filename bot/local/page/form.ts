import type { FieldValue, FormValues } from '../form-values.ts';

/** What the elements around a block share: what is filled in, what is wrong, and how to act. */
export type Form = {
  readonly values: FormValues;
  readonly errors: Readonly<Record<string, string>>;
  readonly isBusy: boolean;
  readonly change: (blockId: string, actionId: string, value: FieldValue) => void;
  /** Tells the app; the value is that of the element after the gesture. */
  readonly act: (blockId: string, actionId: string, value?: FieldValue) => void;
};

export const withValue = (
  values: FormValues,
  blockId: string,
  actionId: string,
  value: FieldValue,
): FormValues => ({ ...values, [blockId]: { ...values[blockId], [actionId]: value } });
