import type { CasebookAnswer } from "@/lib/answers";
import { calendarDateOf } from "@/lib/intake";
import type { BookAsked } from "../_question";

type Props = { readonly asked: BookAsked; readonly answer: CasebookAnswer };

const months = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** Up to which day the lists reckon, how sure that is, and what the page is not. */
export function Reckoned({ asked, answer }: Props) {
  const { list } = asked;
  const reckons = list?.startsWith("film-missing-") || list === "not-healed-at-12-months";
  return (
    <p className="muted">
      Past data as last imported{answer.dataTo === null ? "" : `, with operations up to ${answer.dataTo}`}: neither the clinical record nor
      a recall list. Days are days from that segment’s surgery.
      {reckons && answer.closing !== null
        ? ` What is due is reckoned up to ${dateText(answer.closing)}, when the last file came in, and from the middle of the quarter of surgery: the registry keeps no date, so that half a quarter (half a year where only the year is kept) may be wrong.`
        : ""}
    </p>
  );
}

function dateText(day: number): string {
  const date = calendarDateOf(day);
  return `${date.day} ${months[date.month - 1]} ${date.year}`;
}
