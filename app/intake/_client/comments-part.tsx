"use client";

import { useState } from "react";
import { counted } from "@/lib/charts";
import type { CodedEvent } from "@/lib/intake";
import type { View } from "../_talk/view";
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
      <Uncoded comments={comments} isCoded={isCoded} goTo={setIndex} />
      <GoOn from="comments" state={state} goTo={goTo} />
    </>
  );
}

type UncodedProps = Pick<View, "comments"> & { readonly isCoded: (index: number) => boolean; readonly goTo: (index: number) => void };

const mostListed = 60;

/** The rows whose comments aren't coded yet, each a way to it. */
function Uncoded({ comments, isCoded, goTo }: UncodedProps) {
  const open = [...comments.keys()].filter((index) => !isCoded(index));
  const isOfMany = new Set(comments.map(({ file }) => file)).size > 1;
  if (open.length === 0) return null;
  return (
    <ul className="uncoded plain sans number" aria-label="Not coded yet">
      {open.slice(0, mostListed).map((index) => (
        <li key={index}>
          <button type="button" className="as-link" onClick={() => goTo(index)}>
            row {comments[index]?.row}
            {isOfMany ? ` of ${comments[index]?.file}` : ""}
          </button>
        </li>
      ))}
      {open.length > mostListed ? <li className="muted">and {open.length - mostListed} more</li> : null}
    </ul>
  );
}
