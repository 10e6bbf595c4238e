import { emptyMapping } from "@/lib/intake";
import { loadMapping, sayMapping } from "./doings";
import { forgetMapping } from "./kept-words";
import { saveBlob } from "./save-blob";
import type { IntakeStore } from "./store";

/** A mapping is saved for the next file of this shape, and loaded before it. Nothing of a row stands in it. */
export function MappingDoings({ store }: { readonly store: IntakeStore }) {
  const save = async () => {
    const mapping = await store.quietly("mapping", {});
    if (mapping) saveBlob(new Blob([`${JSON.stringify(mapping, null, 2)}\n`], { type: "application/json" }), "intake.mapping.json");
  };
  const forget = () => {
    sayMapping(store, emptyMapping);
    forgetMapping();
  };
  return (
    <div className="doings sans not-printed">
      <button type="button" onClick={() => void save()}>
        Save the mapping for the next file
      </button>
      <label className="button">
        Load a mapping
        <input
          type="file"
          accept=".json"
          className="only-heard"
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            if (file) void loadMapping(store, file);
            event.target.value = "";
          }}
        />
      </label>
      <button type="button" className="as-link" onClick={forget}>
        Forget what was said of the columns
      </button>
    </div>
  );
}
