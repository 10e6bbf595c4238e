import { beganAfter, type EventFacts, inTheatre, neededOperation, originOfEvent, resolvedBy, type TreatmentEnd } from "./facts";

/** Class of one event under a published scheme; `null` where the scheme has none for it. */
type Classify = (event: EventFacts, end: TreatmentEnd) => string | null;

export type Scheme = {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  /** Parts of the rule that could not be read in the source and are from memory. */
  readonly fromMemory: string | null;
  /** Mildest first. */
  readonly classes: readonly string[];
  /** Where the class is the treatment's and not one event's. */
  readonly of: "event" | "segment";
  readonly classify: Classify;
};

/**
 * Problem: resolved without an operation; obstacle: resolved by one; complication: in theatre, after treatment or never resolved.
 * Paley D. Clin Orthop Relat Res 1990;(250):81-104.
 */
const problemObstacle: Classify = (event, end) => {
  const complication = inTheatre(event) || beganAfter(event, end) || !resolvedBy(event, end);
  if (!complication) return neededOperation(event) ? "obstacle" : "problem";
  const major = event.goalMissed === true || event.sequela === "permanent" || (neededOperation(event) && beganAfter(event, end));
  return major ? "complication-major" : "complication-minor";
};

/** What one event does to the three promises (gain, time, no sequela); the time rule is the segment's (`tripleContractOf`). */
const tripleContract: Classify = (event) => {
  if (event.sequela === "permanent" || event.death === true) return "iv";
  if (event.goalMissed === true) return "iii";
  return neededOperation(event) ? "ii" : "i";
};

const threeLevel: Classify = (event) => {
  if (event.sequela === "permanent" || event.goalMissed === true || event.death === true) return "severe";
  return neededOperation(event) ? "serious" : "minor";
};

const severity: Classify = (event) => {
  if (event.sequela === "permanent" || event.death === true) return "iiib";
  if (event.goalMissed === true) return "iiia";
  return neededOperation(event) || event.planChanged === true ? "ii" : "i";
};

const routine: ReadonlySet<string | null> = new Set([null, "nothing", "advice-or-physiotherapy"]);
const reviewed: ReadonlySet<string | null> = new Set(["programme-changed", "oral-drug"]);

const surgical: Classify = (event) => {
  if (event.death === true || event.eventType === "death-any-cause") return "v";
  if (event.lifeOrLimbThreat === true || event.sequela === "permanent" || event.handling === "intensive-care")
    return event.sequela === "permanent" ? "ivb" : "iva";
  if (routine.has(event.handling)) return event.planChanged === true ? "ii" : "i";
  return reviewed.has(event.handling) ? "ii" : "iii";
};

const distractionControl: ReadonlySet<string> = new Set([
  "mechanism-failure",
  "runaway",
  "failure-to-distract",
  "backtracking",
  "controller-failure",
]);
const stability: ReadonlySet<string> = new Set([
  "nail-bent",
  "nail-broken",
  "locking-screw-failure",
  "pin-or-wire-broken",
  "pin-loose",
  "frame-unstable",
]);

/** Only events of the device; bone loss around a nail (`osteolysis`) counts among the tissue reactions. */
const deviceRelated: Classify = (event) => {
  const { eventType } = event;
  if (originOfEvent(event) !== "device" && eventType !== "osteolysis") return null;
  const kind = distractionControl.has(eventType) ? "i" : stability.has(eventType) ? "ii" : "iii";
  if (event.sequela === "permanent" || event.goalMissed === true) return `${kind}c`;
  return `${kind}${neededOperation(event) ? "b" : "a"}`;
};

/** The published schemes (ids.md §8), derived from the facts. */
export const schemes: readonly Scheme[] = [
  {
    id: "problem-obstacle",
    title: "Problems, obstacles and complications",
    source: "Paley D. Problems, obstacles, and complications of limb lengthening. Clin Orthop Relat Res 1990;(250):81-104",
    fromMemory: "the cut between minor and major",
    classes: ["problem", "obstacle", "complication-minor", "complication-major"],
    of: "event",
    classify: problemObstacle,
  },
  {
    id: "triple-contract",
    title: "Triple contract",
    source:
      "Lascombes P et al. J Bone Joint Surg Am 2012 (planned gain, planned time, no sequela); time breach by 45 days/cm as examined in 240 frame lengthenings",
    fromMemory: "that 45 days/cm is the scheme’s own figure",
    classes: ["i", "ii", "iii", "iv"],
    of: "segment",
    classify: tripleContract,
  },
  {
    id: "triple-contract-without-time",
    title: "Triple contract without its time rule",
    source: "as the triple contract",
    fromMemory: null,
    classes: ["i", "ii", "iii", "iv"],
    of: "segment",
    classify: tripleContract,
  },
  {
    id: "three-level",
    title: "Minor, serious, severe",
    source: "Dahl MT, Gulli B, Berg T. Clin Orthop Relat Res 1994;(301):10-18",
    fromMemory: "the cut points and the pages",
    classes: ["minor", "serious", "severe"],
    of: "event",
    classify: threeLevel,
  },
  {
    id: "severity",
    title: "Severity, with origin apart",
    source: "grades of Black et al. 2015 as used by the 2020 systematic review of lengthening nails",
    fromMemory: "the finer text of the grades",
    classes: ["i", "ii", "iiia", "iiib"],
    of: "event",
    classify: severity,
  },
  {
    id: "surgical",
    title: "Surgical grades adapted to orthopaedics",
    source: "modified five-grade surgical classification, reliability study with 18 raters and 40 cases",
    fromMemory: "which handling counts as out-patient care",
    classes: ["i", "ii", "iii", "iva", "ivb", "v"],
    of: "event",
    classify: surgical,
  },
  {
    id: "device-related",
    title: "Device-related",
    source: "three classes of nail complications (distraction control, stability, other), each problem, obstacle or sequela",
    fromMemory: null,
    classes: ["ia", "ib", "ic", "iia", "iib", "iic", "iiia", "iiib", "iiic"],
    of: "event",
    classify: deviceRelated,
  },
];

/** @throws RangeError when there is no such scheme */
export function schemeOf(id: string): Scheme {
  const found = schemes.find((scheme) => scheme.id === id);
  if (!found) throw new RangeError(`schemeOf requires a scheme among ${schemes.map((scheme) => scheme.id).join(", ")}, received another`);
  return found;
}

/** The heavier of two classes of a scheme. */
export function worseOf(scheme: Scheme, a: string | null, b: string | null): string | null {
  return scheme.classes.indexOf(a ?? "") >= scheme.classes.indexOf(b ?? "") ? a : b;
}
