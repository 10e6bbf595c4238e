import type { healing } from "@/lib/answers";

export type Registry = Parameters<typeof healing>[0];
export type Where = NonNullable<Parameters<typeof healing>[1]["where"]>;

/** What every place is asked: who, split by what, and as of which batch (`null`: the newest). */
export type PlaceQuestion = { readonly where: Where; readonly by: readonly string[]; readonly asOf: number | null };

/** A clock of healing may start at a landmark: days from surgery. */
export type FromLandmark = { readonly landmark?: number | undefined };

/** The landmark as answers take it: nothing where none was said. */
export function landmarkOf({ landmark }: FromLandmark): { readonly landmark?: number } {
  return landmark === undefined ? {} : { landmark };
}

/** The question as answers take it: what wasn't said is not there. */
export function askedOf({ where, by, asOf }: PlaceQuestion) {
  return { where, by, ...(asOf === null ? {} : { asOf }) };
}
