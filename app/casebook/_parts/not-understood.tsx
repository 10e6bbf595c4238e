import { PlainPage } from "../../_page/plain-page";
import type { Trouble } from "../_question";

export function NotUnderstood({ troubles }: { readonly troubles: readonly Trouble[] }) {
  return (
    <PlainPage title="This address asks for something that the casebook can’t show.">
      <ul>
        {troubles.map(({ parameter, expected }) => (
          <li key={parameter + expected}>
            <strong>{parameter}</strong> must be {expected}.
          </li>
        ))}
      </ul>
      <p>
        <a href="/casebook">Show the casebook</a>
      </p>
    </PlainPage>
  );
}
