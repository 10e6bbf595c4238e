import type { Where } from "@/lib/cohorts";
import { addressOf } from "../_address";

const beginnings: readonly (readonly [text: string, where: Where])[] = [
  ["femora", { bone: ["femur"] }],
  ["magnetic nails", { device: ["magnetic-nail"] }],
  ["short stature, both sides", { indication: ["stature"], arrangement: { missing: false }, not: { arrangement: ["one-side"] } }],
  ["followed for a year or more", { followUpDays: { from: 365 } }],
  ["who may be used for research", { permittedUse: ["research-with-consent", "research-by-approval"] }],
];

/** Where one may begin when nothing is said yet. */
export function Beginnings() {
  return (
    <p className="not-printed">
      Begin with a condition above, or with{" "}
      {beginnings.map(([text, where], i) => (
        <span key={text}>
          {i === 0 ? "" : i === beginnings.length - 1 ? " or " : ", "}
          <a href={addressOf("/cohorts", { where })}>{text}</a>
        </span>
      ))}
      .
    </p>
  );
}
