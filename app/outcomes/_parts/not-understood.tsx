import { PlainPage } from "../../_page/plain-page";
import type { Trouble } from "../_address/pieces";

type Props = { readonly troubles: readonly Trouble[]; readonly afresh?: string };

export function NotUnderstood({ troubles, afresh = "/outcomes" }: Props) {
  return (
    <PlainPage title="This address asks for something that can’t be answered.">
      <ul>
        {troubles.map(({ parameter, expected }) => (
          <li key={parameter + expected}>
            <strong>{parameter}</strong> must be {expected}.
          </li>
        ))}
      </ul>
      <p>
        <a href={afresh}>Ask afresh</a>
      </p>
    </PlainPage>
  );
}
