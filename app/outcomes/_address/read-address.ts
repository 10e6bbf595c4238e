import type { Where } from "@/lib/cohorts";
import type { Asked } from "../../_page/asked";
import { readBatch, readBy, readWhere, type Trouble, textOf } from "./pieces";

/** The words of a sentence that can be changed, each with the values that it may have; the first is the usual one. */
export type Words = Readonly<Record<string, readonly [string, ...string[]]>>;
export type Chosen<Spec extends Words> = { readonly [Name in keyof Spec]: Spec[Name][number] };
export type AddressQuestion<Spec extends Words> = {
  readonly where: Where;
  readonly by: readonly string[];
  readonly asOf: number | null;
  readonly words: Chosen<Spec>;
};

const mostNamed = 12;

/** Reads the address of a place. The address is the question: what is left out of it has its usual value. */
export function readAddress<const Spec extends Words>(
  asked: Asked,
  spec: Spec,
  { newestBatch, usualBy = [] }: { readonly newestBatch: number; readonly usualBy?: readonly string[] },
): { readonly question: AddressQuestion<Spec> } | { readonly troubles: readonly Trouble[] } {
  const troubles: Trouble[] = [];
  const refuse = (parameter: string, expected: string) => void troubles.push({ parameter, expected });
  const known = [...Object.keys(spec), "by", "where", "asOf"];
  for (const name of Object.keys(asked)) if (!known.includes(name)) refuse("a piece with an unknown name", `one of ${known.join(", ")}`);
  const text = (name: string) => textOf(asked[name], () => refuse(name, "to be given once"));

  const words = Object.fromEntries(
    Object.entries(spec).map(([name, values]) => {
      const given = text(name) ?? values[0];
      if (!values.includes(given)) refuse(name, expectedOf(values));
      return [name, given];
    }),
  );
  // a split that is said to be nothing is nothing; one that isn't said is the usual one
  const by = asked.by === undefined ? usualBy : readBy(text("by"), refuse);
  const where = readWhere(text("where"), refuse);
  const asOf = readBatch(text("asOf"), newestBatch, refuse);
  if (troubles.length > 0) return { troubles };
  // each word was held against its list above
  return { question: { where, by, asOf, words: words as Chosen<Spec> } };
}

function expectedOf(values: readonly string[]): string {
  const [first = ""] = values;
  const named = values.map((value) => value || "nothing");
  if (values.length > mostNamed) return `one of the ${values.length} that the sentence offers, such as ${first}`;
  return named.length === 2 ? named.join(" or ") : `one of ${named.join(", ")}`;
}
