import { type MouseEvent, type ReactNode, useEffect, useRef } from "react";
import type { Step } from "./steps";

type Props = {
  readonly step: Step;
  readonly isOpen: boolean;
  readonly isReached: boolean;
  readonly title: string;
  readonly gist: string;
  readonly goTo: (step: Step) => void;
  readonly children: ReactNode;
};

/** A part of the letter. The heading of one that can be opened leads to it; the one that opens takes the eye and the focus with it. */
export function Part({ step, isOpen, isReached, title, gist, goTo, children }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const wasOpen = useRef<boolean | null>(null);
  useEffect(() => {
    // the part that stands open when the page comes up takes no focus from it
    if (isOpen && wasOpen.current === false) {
      heading.current?.focus({ preventScroll: true });
      heading.current?.scrollIntoView({ block: "start" });
    }
    wasOpen.current = isOpen;
  }, [isOpen]);
  const open = (event: MouseEvent) => {
    if (event.metaKey || event.ctrlKey || event.shiftKey) return;
    event.preventDefault();
    goTo(step);
  };
  return (
    <li className={isOpen ? "part is-open" : "part"} aria-current={isOpen ? "step" : undefined}>
      <section aria-labelledby={`part-${step}`}>
        <h2 id={`part-${step}`} ref={heading} tabIndex={-1} className={isReached ? undefined : "muted"}>
          {isReached && !isOpen ? (
            <a href={`?step=${step}`} onClick={open}>
              {title}
            </a>
          ) : (
            title
          )}
        </h2>
        {gist === "" ? null : <p className="gist sans muted">{gist}</p>}
        {children}
      </section>
    </li>
  );
}
