"use client";

import { useEffect } from "react";
import { bringFiles } from "./doings";
import type { IntakeStore } from "./store";

/** A file dropped anywhere on the page comes in; without this a browser would leave the page and show the file. */
export function DropAnywhere({ store }: { readonly store: IntakeStore }) {
  useEffect(() => {
    const over = (event: DragEvent) => {
      if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
    };
    const drop = (event: DragEvent) => {
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      void bringFiles(store, files);
    };
    window.addEventListener("dragover", over);
    window.addEventListener("drop", drop);
    return () => {
      window.removeEventListener("dragover", over);
      window.removeEventListener("drop", drop);
    };
  }, [store]);
  return null;
}
