import { Fragment } from "react";

/** Longer words than this break where they must: a cohort typed as JSON is wider than a phone. */
const mostWhole = 28;

/** A command line to be copied; it breaks between its words, and not at the hyphens of an option. */
export function Command({ text }: { readonly text: string }) {
  return (
    <code>
      {text.split(" ").map((word, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: words of one line, which never change their order
        <Fragment key={index}>
          {index === 0 ? "" : " "}
          {word.length > mostWhole ? word : <span className="unbroken">{word}</span>}
        </Fragment>
      ))}
    </code>
  );
}
