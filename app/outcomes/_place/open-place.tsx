import type { ReactNode } from "react";
import { standing } from "../../_data/standing";
import type { Asked } from "../../_page/asked";
import { type AddressQuestion, readAddress, type Words } from "../_address/read-address";
import { NoData } from "../_parts/no-data";
import { NotUnderstood } from "../_parts/not-understood";
import { type PlaceId, placeOf } from "../_places/places";

type Opened<Spec extends Words> = { readonly question: AddressQuestion<Spec> } | { readonly page: ReactNode };

/** What stands before every place: an address that isn't understood, or a registry without data, has a page of its own. */
export async function openPlace<const Spec extends Words>(
  place: PlaceId,
  searchParams: Promise<Asked>,
  spec: Spec,
  options: { readonly usualBy?: readonly string[]; readonly wouldStand: string },
): Promise<Opened<Spec>> {
  const { batch, segments } = await standing();
  const read = readAddress(await searchParams, spec, { newestBatch: batch, ...(options.usualBy ? { usualBy: options.usualBy } : {}) });
  if ("troubles" in read) return { page: <NotUnderstood troubles={read.troubles} afresh={placeOf(place).path} /> };
  if (segments === 0 && read.question.asOf === null) return { page: <NoData wouldStand={options.wouldStand} /> };
  return read;
}
