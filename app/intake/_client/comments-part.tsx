"use client";

import { useState } from "react";
import { counted } from "@/lib/charts";
import type { CodedEvent } from "@/lib/intake";
import { codeComment, codedOf } from "./coding";
import { CommentDesk } from "./comment-desk";
import { GoOn } from "./go-on";
import type { PartProps } from "./part-props";

/** Comments, one at a time, coded before they are dropped. */
export function CommentsPart({ store, state, goTo }: PartProps) {
  const comments = state.view?.comments ?? [];
  const { coded } = state.said;
  const isCoded = (index: number) => {
    const comment = comments[index];
    return comment !== undefined && codedOf(coded, comment) !== undefined;
  };
  const [index, setIndex] = useState(() =>
    Math.max(
      0,
      comments.findIndex((_, i) => !isCoded(i)),
    ),
  );
  const open = comments.length - coded.length;
  const code = (events: readonly CodedEvent[] | null, indices: readonly number[]) =>
    codeComment(
      store,
      indices.flatMap((i) => comments[i] ?? []),
      events,
    );
  return (
    <>
      <p>
        Most sheets hold their complications in their comments. Code what each says, or that there is nothing to code; the text itself never
        leaves this tab. Segments whose comments aren’t coded stand as <em>events not collected</em>, and enter no complication rate.
      </p>
      <p className="sans number">
        <progress value={coded.length} max={comments.length} aria-label="Comments coded" /> {coded.length} of{" "}
        {counted(comments.length, "comment")} coded
      </p>
      <CommentDesk store={store} coded={coded} index={index} of={comments.length} isCoded={isCoded} goTo={setIndex} code={code} />
      <p className="sans muted">{open === 0 ? "Every comment is coded." : `Gone on now, ${counted(open, "comment")} stay uncoded.`}</p>
      <GoOn from="comments" state={state} goTo={goTo} />
    </>
  );
}
