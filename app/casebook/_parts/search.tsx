import { SearchForm } from "../_client/search-form";
import { addressOf, type BookAsked } from "../_question";
import { Kept } from "./book-sentence";

type Props = { readonly asked: BookAsked; readonly highestCase: number };

export function Search({ asked, highestCase }: Props) {
  return (
    <search>
      <SearchForm search={asked.search} highestCase={highestCase}>
        {asked.search === "" ? null : <a href={addressOf({ ...asked, search: "", from: 1 })}>Clear</a>}
        <Kept asked={asked} but={["search", "from"]} />
      </SearchForm>
    </search>
  );
}
