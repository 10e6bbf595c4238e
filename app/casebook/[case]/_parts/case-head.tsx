import type { CaseAnswer, CaseSegment } from "@/lib/answers";
import { counted, listed } from "@/lib/charts";
import { noBreak } from "../../../_page/no-break";
import { Whose } from "../../_client/whose";
import { codeWords, numberWords, sentence } from "../../_words";

type Props = { readonly answer: CaseAnswer };

export function CaseHead({ answer }: Props) {
  const whole = answer.batch === answer.newestBatch;
  return (
    <>
      <p className="sans not-printed">
        <a href="/casebook">Casebook</a>
      </p>
      <h1>What is held of case {answer.case}?</h1>
      <p className="answer number">{noBreak(headSentence(answer))}</p>
      <p className="muted">
        Past data as last imported{whole ? "" : `, as they stood as of batch ${answer.batch}`}: neither the clinical record nor a recall
        list. Days are days from surgery, and ranges test typing, not safety.
        {whole ? null : (
          <>
            {" "}
            <a href={`/casebook/${answer.case}`}>Show them as of now</a>
          </>
        )}
      </p>
      <Whose only={answer.case} />
    </>
  );
}

/** Who it is, as groups are told: sex, indication, cause; then each segment and how it stands. */
function headSentence({ recorded, segments }: CaseAnswer): string {
  const value = (field: string) => recorded.find((held) => held.field === field)?.value;
  const words = ["sex", "indication", "aetiology"].flatMap((field) => {
    const code = value(field);
    return typeof code === "string" && code !== "unknown" ? [codeWords(code)] : [];
  });
  const who = words.length === 0 ? "No sex, indication or cause recorded" : sentence(words.join(", "));
  if (segments.length === 0) return `${who}; no segment is held.`;
  return `${who}: ${counted(segments.length, "segment")} lengthened, ${listed(segments.map(segmentWords))}.`;
}

function segmentWords({ bone, side, surgeryYear, status, course }: CaseSegment): string {
  const gain = course.gained === null ? "" : `, ${numberWords(course.gained.mm)} mm gained`;
  return `the ${side} ${codeWords(bone)} in ${surgeryYear} (${codeWords(status)}${gain})`;
}
