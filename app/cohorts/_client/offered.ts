export type PlainValue = string | number | boolean | null;
export type OfferedValue = { readonly value: PlainValue; readonly text: string };
export type OfferedField = {
  readonly id: string;
  readonly label: string;
  readonly kind: "number" | "values";
  readonly unit: string | null;
  readonly values: readonly OfferedValue[];
};
export type FieldGroup = { readonly heading: string; readonly fields: readonly OfferedField[] };
