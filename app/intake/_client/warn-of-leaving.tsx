"use client";

import { useEffect } from "react";

/** The browser asks before a tab with a file not yet kept is left or reloaded. */
export function WarnOfLeaving({ when }: { readonly when: boolean }) {
  useEffect(() => {
    if (!when) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", warn);
    return () => window.removeEventListener("beforeunload", warn);
  }, [when]);
  return null;
}
