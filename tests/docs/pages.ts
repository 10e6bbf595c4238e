import { codebookPage } from "@/lib/codebook";
import { clerkQuestionsPage } from "./clerk-questions";
import { commandsSection } from "./commands";
import { measuresPage } from "./measures";
import { methodsPage } from "./methods/page";
import { printedPercentsPage } from "./printed-percents";
import { questionsPage } from "./questions";

/** Pages of the docs that are written from the code: path and content. */
export const writtenPages: Readonly<Record<string, () => string>> = {
  "docs/clerk-questions.md": clerkQuestionsPage,
  "docs/questions.md": questionsPage,
  "docs/ids.md": () => `${codebookPage()}\n${commandsSection()}`,
  "docs/measures.md": measuresPage,
  "docs/methods.md": methodsPage,
  "docs/printed-percents.md": printedPercentsPage,
};
