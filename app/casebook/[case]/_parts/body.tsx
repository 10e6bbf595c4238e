import type { BodyMeasureAt, BoneAt, CaseAnswer, CaseBody, ProportionBeside } from "@/lib/answers";
import { decimals } from "@/lib/charts";
import { codeWords, fieldWords, numberWords, sentence } from "../../_words";
import { CorrectLink } from "./correct-link";

type Props = { readonly answer: CaseAnswer };

const proportions: Readonly<Record<ProportionBeside["id"], string>> = {
  "proportion-tibia-femur": "Tibia : femur",
  "proportion-sitting-height": "Sitting height : stature",
  "proportion-leg": "Leg length : stature",
  "proportion-span": "Arm span : stature",
  "proportion-left-right": "Largest left–right difference, mm",
};

/** Lengths and proportions before and after, each saying whether it was measured or derived. */
export function Body({ answer: { case: number, body, segments } }: Props) {
  const { measures, bones, proportions: ratios } = body;
  if (measures.length === 0 && bones.length === 0) return null;
  const young = segments.some(({ recorded }) =>
    recorded.some(({ field, value }) => field === "ageAtSurgeryYears" && typeof value === "number" && value < 18),
  );
  return (
    <section aria-labelledby="body">
      <h2 id="body">Lengths and proportions</h2>
      <p>
        {gainText(body)} {young ? "Operated on under 18: a change is growth plus surgery." : ""}
      </p>
      {bones.length + ratios.length === 0 ? null : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard to be scrolled
        <section className="scrolls" tabIndex={0} aria-label="Before and after">
          <table className="data">
            <caption className="only-heard">Lengths of bones and proportions, before and after</caption>
            <thead>
              <tr>
                <th scope="col" className="start">
                  Reading
                </th>
                <th scope="col">Before</th>
                <th scope="col">After</th>
                <th scope="col">Change</th>
              </tr>
            </thead>
            <tbody>
              {bones.map(boneRow)}
              {ratios.map(proportionRow)}
            </tbody>
          </table>
        </section>
      )}
      {measures.length === 0 ? null : (
        <details>
          <summary>Body measures as recorded</summary>
          <ul className="plain">{measures.map((measure) => measureItem(measure, number))}</ul>
        </details>
      )}
    </section>
  );
}

function gainText({ statureGainMm: bones, measuredStatureGainMm: standing }: CaseBody): string {
  const legs = bones.measured ? `Gain of the legs, mean of the two sides, femur and tibia added: ${numberWords(bones.value)} mm.` : "";
  const height = standing.measured
    ? `Standing height after less before: ${numberWords(standing.value)} mm, which holds posture and time of day too.`
    : "";
  return [legs, height].filter((text) => text !== "").join(" ");
}

function boneRow({ bone, side, before, after }: BoneAt) {
  const change = before === null || after === null ? null : after.lengthMm - before.lengthMm;
  return (
    <tr key={`${bone}-${side}`}>
      <th scope="row" className="start">
        {sentence(side)} {codeWords(bone)}, mm
      </th>
      {[before, after].map((reading, i) => (
        <td key={i === 0 ? "before" : "after"}>
          {reading === null ? "–" : numberWords(reading.lengthMm)}
          {reading === null ? null : <span className="under">{reading.source}</span>}
        </td>
      ))}
      <td>{change === null ? "–" : numberWords(change)}</td>
    </tr>
  );
}

function proportionRow({ id, before, after }: ProportionBeside) {
  const digits = id === "proportion-left-right" ? 0 : 3;
  const change = before.measured && after.measured ? decimals(after.value - before.value, digits) : "–";
  return (
    <tr key={id}>
      <th scope="row" className="start">
        {proportions[id]}
      </th>
      {[before, after].map((reading, i) => (
        <td key={i === 0 ? "before" : "after"}>
          {reading.measured ? decimals(reading.value, digits) : "–"}
          {reading.measured ? <span className="under">{reading.source}</span> : null}
        </td>
      ))}
      <td>{change}</td>
    </tr>
  );
}

function measureItem({ measure, occasion, day, dayFrom, recorded }: BodyMeasureAt, number: number) {
  const when = day === null ? "on a day that can’t be counted" : `day ${numberWords(day)} from the first operation`;
  const taken =
    dayFrom === "surgery" || dayFrom === "last-follow-up" ? `, the day of ${dayFrom === "surgery" ? "surgery" : "the last follow-up"}` : "";
  return (
    <li key={measure}>
      {sentence(occasion === null ? "measured" : codeWords(occasion))}, {when}
      {taken}: {recorded.map((held) => fieldWords(held, held.value)).join("; ")}.{" "}
      <CorrectLink number={number} table="bodyMeasure" entity={measure} label={`the body measure, ${when}`} />
    </li>
  );
}
