import type { Asked } from "../../../_page/asked";

const texts = {
  corrected: "The field was corrected",
  joined: "The two numbers are read as one patient from now on",
  parted: "The number was parted from this patient, with all that came under it",
} as const;

/** What came of a change: the address says it, so that a reload says it again and does nothing again. */
export function Said({ asked }: { readonly asked: Asked }) {
  for (const [name, text] of Object.entries(texts)) {
    const batch = asked[name];
    if (typeof batch === "string" && /^\d{1,9}$/.test(batch))
      return (
        <p className="said sans" role="status">
          {text}, as batch {batch}. To have it as it was, take batch {batch} back on <a href="/">Today</a>.
        </p>
      );
  }
  return null;
}
