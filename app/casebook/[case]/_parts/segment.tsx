import type { CaseAnswer, CaseSegment } from "@/lib/answers";
import { drawSvg, hasCourse, layoutCourse, layoutTimeline } from "@/lib/charts";
import { noBreak } from "../../../_page/no-break";
import { Figure } from "../../../outcomes/_client/figure";
import { sentence } from "../../_words";
import { courseFor, treatmentOf } from "../_figures";
import { courseWords, segmentName, standingWords } from "../_segment-words";
import { Events } from "./events";
import { Recorded } from "./recorded";
import { Visits } from "./visits";

type Props = { readonly segment: CaseSegment; readonly answer: CaseAnswer };

const widths = { wide: 880, narrow: 328 } as const;

export function Segment({ segment, answer }: Props) {
  const name = segmentName(segment, answer.segments);
  const id = `segment-${segment.segment}`;
  return (
    <section aria-labelledby={id} className="segment">
      <h2 id={id}>{sentence(name)}</h2>
      <p className="number">{noBreak(standingWords(segment))}</p>
      <Timeline segment={segment} answer={answer} />
      <CourseFigure segment={segment} answer={answer} />
      <Events segment={segment} name={name} number={answer.case} />
      <Visits visits={segment.visits} name={name} number={answer.case} />
      <Recorded
        answer={answer}
        title={`The ${name}, as recorded`}
        table="segment"
        entity={segment.segment}
        recorded={segment.recorded}
        folded
      />
    </section>
  );
}

function Timeline({ segment, answer }: Props) {
  const record = treatmentOf(answer.case, segment);
  const draw = (width: number) => drawSvg(layoutTimeline(record, { width }));
  return (
    <Figure
      wide={draw(widths.wide)}
      narrow={draw(widths.narrow)}
      caption={captionOf(`Treatment of the ${record.title}`, answer)}
      fileName={`case-${answer.case}-${segment.segment}-treatment.svg`}
    />
  );
}

function CourseFigure({ segment, answer }: Props) {
  const record = courseFor(answer.case, segment);
  if (!hasCourse(record)) return <p className="muted">No length at a visit and no prescribed rate: there is no course to draw.</p>;
  const draw = (width: number) => drawSvg(layoutCourse(record, { width }));
  return (
    <>
      <h3>Course against prescription</h3>
      <p className="number">{noBreak(courseWords(segment))}</p>
      <Figure
        wide={draw(widths.wide)}
        narrow={draw(widths.narrow)}
        caption={captionOf(`Course of distraction of the ${record.title}`, answer)}
        fileName={`case-${answer.case}-${segment.segment}-course.svg`}
      />
    </>
  );
}

function captionOf(title: string, { batch, dataTo }: CaseAnswer): string {
  return `${title}. Days from surgery. Past data as last imported, not for deciding, planning or monitoring treatment. Data to ${dataTo ?? "no quarter"}, batch ${batch}.`;
}
