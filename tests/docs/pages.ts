import { codebookPage } from "@/lib/codebook";
import { methodsPage } from "./methods/page";

/** Pages of the docs that are written from the code: path and content. */
export const writtenPages: Readonly<Record<string, () => string>> = {
  "docs/ids.md": codebookPage,
  "docs/methods.md": methodsPage,
};
