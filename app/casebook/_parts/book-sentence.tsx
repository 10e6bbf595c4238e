import { casebookColumns, casebookLists } from "@/lib/answers";
import { describeWhere } from "@/lib/cohorts";
import { Sentence, Word } from "../../outcomes/_client/sentence";
import { addressOf, type BookAsked, piecesOf } from "../_question";

type Props = { readonly asked: BookAsked };

const lists = [{ value: "", text: "all that is held" }, ...casebookLists.map(({ id, title }) => ({ value: id, text: title }))];
const orders = [
  { value: "rising", text: "rising" },
  { value: "falling", text: "falling" },
];
const sorts = [
  { value: "case", text: "case number" },
  ...casebookColumns.map(({ id, label }) => ({ value: id, text: label.charAt(0).toLowerCase() + label.slice(1) })),
];

/** The question as a sentence: which list, of which cohort, in which order. */
export function BookSentence({ asked }: Props) {
  const whole = Object.keys(asked.where).length === 0;
  return (
    <Sentence action="/casebook">
      Which cases are held: <Word name="list" label="List" value={asked.list ?? ""} choices={lists} comma /> of{" "}
      <span className="cohort">{describeWhere(asked.where)}</span>
      {whole ? null : (
        <>
          {" "}
          (<a href={addressOf({ ...asked, where: {}, from: 1 })}>take all</a>)
        </>
      )}
      , by <Word name="sort" label="Sorted by" value={asked.sort} choices={sorts} comma />{" "}
      <Word name="order" label="Order" value={asked.descending ? "falling" : "rising"} choices={orders} />
      {asked.asOf === null ? null : `, as of batch ${asked.asOf}`}?<Kept asked={asked} but={["list", "sort", "order", "from"]} />
    </Sentence>
  );
}

/** What a form of this page keeps of the question. */
export function Kept({ asked, but }: Props & { readonly but: readonly string[] }) {
  return piecesOf(asked)
    .filter(([name]) => !but.includes(name))
    .map(([name, value]) => <input key={name} type="hidden" name={name} value={value} />);
}
