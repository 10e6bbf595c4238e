import { addressOf, type BookAsked } from "../_question";
import { Kept } from "./book-sentence";

export function Search({ asked }: { readonly asked: BookAsked }) {
  return (
    <search>
      <form action="/casebook" method="get" className="search sans not-printed">
        <label htmlFor="search">Search</label>
        <input
          id="search"
          name="search"
          type="search"
          defaultValue={asked.search}
          maxLength={200}
          autoComplete="off"
          aria-describedby="search-hint"
        />
        <button type="submit">Find</button>
        {asked.search === "" ? null : <a href={addressOf({ ...asked, search: "", from: 1 })}>Clear</a>}
        <span id="search-hint" className="muted small hint">
          A case’s number, a year, a surgeon’s code, or words: <em>femur left magnetic</em>
        </span>
        <Kept asked={asked} but={["search", "from"]} />
      </form>
    </search>
  );
}
