import type { FindingCode } from "@/lib/codebook";
import type { View } from "../_talk/view";
import { FindingGroup } from "./finding-group";
import type { IntakeStore } from "./store";

const codes: ReadonlySet<FindingCode> = new Set([
  "identifier-in-cell",
  "identifier-in-header",
  "identifier-suspected",
  "free-text-in-code",
]);

/** Cells, headers and file names outside the columns of persons in which a name, number or birth date was seen, each with its mend. */
export function PersonsSeen({ store, view }: { readonly store: IntakeStore; readonly view: View }) {
  const groups = view.groups.filter(({ code }) => codes.has(code));
  return (
    <section aria-labelledby="persons-seen">
      <h3 id="persons-seen">Where else a person may be named</h3>
      <p className="muted">
        {groups.length === 0 ? "In no other cell, header or file name was a name, number or birth date seen. " : ""}
        Every cell that would be kept, every header and the file’s name were looked at, for staff as for patients. A detector can miss one:
        nothing seen is no proof that nothing is there.
      </p>
      <ul className="plain groups">
        {groups.map((group) => (
          <FindingGroup key={group.key} store={store} group={group} many={view.sheets.length > 1} isOpen />
        ))}
      </ul>
    </section>
  );
}
