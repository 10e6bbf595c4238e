"use client";

import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import { noBreak } from "../../_page/no-break";
import { FigureDoings } from "./figure-doings";
import { MarkList } from "./mark-list";
import { marksOf, nearestMark, walk } from "./marks";

type Props = {
  readonly wide: string;
  readonly narrow: string;
  readonly caption: string;
  readonly fileName: string;
  /** What the figure shows, as a file of its own. */
  readonly csv?: string;
  /** Whether marks are drawn together, without their names. */
  readonly crowded?: boolean;
};

const hint = "Point at a mark, or walk through them with the arrow keys.";

/** The one client component of figures: it takes the drawing as a string and gives it focus, a readout and the ways to take it along. */
export function Figure({ wide, narrow, caption, fileName, csv, crowded = false }: Props) {
  const drawing = useRef<HTMLDivElement>(null);
  const [current, setCurrent] = useState<number | null>(null);
  const [said, setSaid] = useState(hint);
  const hasMarks = wide.includes("data-mark=");

  useEffect(() => nameDrawings(drawing.current), []);

  const show = (index: number | null) => {
    const svg = shownSvg(drawing.current);
    if (!svg || index === current) return;
    const marks = marksOf(svg);
    for (const marked of svg.querySelectorAll(".is-current")) marked.classList.remove("is-current");
    const mark = index === null ? undefined : marks[index];
    mark?.element.classList.add("is-current");
    setCurrent(index);
    setSaid(mark?.label ?? hint);
  };
  const onPointerMove = (event: PointerEvent) => {
    const svg = shownSvg(drawing.current);
    if (svg) show(nearestMark(svg, event.clientX, event.clientY));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const svg = shownSvg(drawing.current);
    const next = svg === null ? null : walk(event.key, current, marksOf(svg).length);
    if (next === null) return;
    event.preventDefault();
    show(next);
  };

  return (
    <figure className="figure">
      <section
        ref={drawing}
        className="drawing walk"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is one stop, and its marks are walked with the arrow keys
        tabIndex={0}
        aria-label={`${nameOf(caption)}. Arrow keys walk through its marks.`}
        onPointerMove={onPointerMove}
        onPointerLeave={() => show(null)}
        onKeyDown={onKeyDown}
      >
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: the string comes from drawSvg, which escapes all that it writes */}
        <div className="wide" dangerouslySetInnerHTML={{ __html: wide }} />
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: as above */}
        <div className="narrow" dangerouslySetInnerHTML={{ __html: narrow }} />
      </section>
      {hasMarks ? (
        <p className="readout sans muted" aria-live="polite">
          {said}
        </p>
      ) : null}
      <figcaption className="sans small">{noBreak(caption)}</figcaption>
      <FigureDoings svg={wide} caption={caption} fileName={fileName} csv={csv ?? null}>
        {hasMarks ? <MarkList crowded={crowded} labels={() => labelsIn(drawing.current)} /> : null}
      </FigureDoings>
    </figure>
  );
}

/** A browser shows the title of a drawing as a tip over all of it; as a label it is heard and stays out of the way. */
function nameDrawings(drawing: HTMLDivElement | null): void {
  for (const svg of drawing?.querySelectorAll("svg") ?? []) {
    const title = svg.querySelector(":scope > title");
    if (title === null) continue;
    svg.setAttribute("aria-label", title.textContent ?? "");
    title.remove();
  }
}

/** What the caption says first: figures of one page are told apart by it. */
function nameOf(caption: string): string {
  return `Figure: ${caption.split(".", 1)[0]}`;
}

function shownSvg(drawing: HTMLDivElement | null): SVGSVGElement | null {
  return [...(drawing?.querySelectorAll("svg") ?? [])].find((svg) => svg.getClientRects().length > 0) ?? null;
}

function labelsIn(drawing: HTMLDivElement | null): readonly string[] {
  const svg = shownSvg(drawing);
  return svg === null ? [] : marksOf(svg).map(({ label }) => label);
}
