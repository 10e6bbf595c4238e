import type { Prepared, Question } from "@/lib/intake";
import type { Asked, View } from "../_talk/view";
import { absentOf, changesOf, correctedShown } from "./changes";
import { sheetsShown } from "./columns";
import { allFindings, countsBySeverity, groupsShown } from "./findings";
import { samplesShown } from "./samples";
import type { Session } from "./session";

const mostRows = 200;

/** What the page shows of prepared files. Rows, findings and comments in full stay here, to be asked for piece by piece. */
export function viewOf(session: Session, prepared: Prepared): View {
  const { stage, questions, counts, comments, mapping } = prepared;
  return {
    stage,
    sheets: sheetsShown(prepared),
    dates: mapping.dates,
    questions: questions.map(asked),
    groups: groupsShown(session, prepared),
    findingsBy: countsBySeverity(allFindings(session, prepared)),
    counts,
    comments: comments.map(({ file, row }) => ({ file, row })),
    samples: samplesShown(prepared),
    changes: changesOf(prepared),
    corrected: correctedShown(prepared),
    absent: absentOf(prepared),
  };
}

function asked({ rows, ...question }: Question): Asked {
  return { ...question, rows: rows.length, firstRows: rows.slice(0, mostRows) };
}
