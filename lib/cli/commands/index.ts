import type { Command } from "../command";
import { batches } from "./batches";
import { casebook } from "./casebook";
import { cohort } from "./cohort";
import { compare } from "./compare";
import { completeness } from "./completeness";
import { complications } from "./complications";
import { correct } from "./correct";
import { followUp } from "./follow-up";
import { intake } from "./intake";
import { join } from "./join";
import { measure } from "./measure";
import { outcome } from "./outcome";
import { part } from "./part";
import { result } from "./result";
import { settings } from "./settings";
import { stats } from "./stats";
import { template } from "./template";
import { undo } from "./undo";

/** Every command by its name, in the order in which help tells them. */
export const commands: Readonly<Record<string, Command>> = {
  intake,
  undo,
  batches,
  casebook,
  completeness,
  correct,
  join,
  part,
  template,
  measure,
  compare,
  complications,
  outcome,
  "follow-up": followUp,
  cohort,
  result,
  settings,
  stats,
};
