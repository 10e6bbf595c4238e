import type { BodyMeasureRow, EventRow, PersonRow, ScoreRow, SegmentRow, VisitRow } from "@/lib/codebook";
import type { Day } from "./calendar";

/** Fields of a codebook row that a person of the scenario holds; days are calendar days here, since nothing is stripped yet. */
type Draft<Row> = { readonly [K in keyof Row]?: Row[K] | undefined };

export type Sex = "female" | "male";
export type Bone = SegmentRow["bone"];
export type Side = SegmentRow["side"];
export type Device = NonNullable<SegmentRow["device"]>;
export type Entry = NonNullable<SegmentRow["entry"]>;
export type PersonDraft = Draft<PersonRow>;
export type SegmentDraft = Draft<SegmentRow>;
export type BodyDraft = Draft<BodyMeasureRow>;
export type EventDraft = Draft<EventRow> & Pick<EventRow, "eventType">;
export type VisitDraft = Draft<VisitRow> & { readonly visitDay: Day };

export type Group = "stature" | "dysplasia" | "difference" | "deformity" | "loss";
export type Pattern =
  | "both-femora"
  | "both-tibiae"
  | "both-humeri"
  | "femora-then-tibiae"
  | "tibiae-then-femora"
  | "one-bone"
  | "femur-and-tibia"
  | "same-bone-again"
  | "femur-and-tibia-then-femur"
  | "one-forearm"
  | "one-foot-ray"
  | "one-hand-ray"
  | "transport";

/** What befalls a segment beside the ordinary course, given out by quota so that every state of a registry is there to be seen. */
export type Fate =
  | "ordinary"
  | "gain-none"
  | "gain-small"
  | "date-missing"
  | "rescue"
  | "rescue-open"
  | "distracting"
  | "infection"
  | "breakage"
  | "abandoned"
  | "nonunion"
  | "amputated";

export type Case = {
  readonly index: number;
  readonly group: Group;
  readonly pattern: Pattern;
  readonly fate: Fate;
  readonly firstSurgery: Day;
};

/** Who the invented person is, as a sheet that holds names would say. */
export type Identity = {
  readonly localId: string;
  readonly nhsNo: string;
  readonly surname: string;
  readonly firstName: string;
  readonly phone: string;
  readonly email: string;
  readonly dateOfBirth: Day;
};

/** The body before the first operation, in mm. */
export type Body = {
  readonly statureMm: number;
  readonly sittingHeightMm: number;
  readonly armSpanMm: number;
  readonly weightKg: number;
  readonly femurMm: { readonly left: number; readonly right: number };
  readonly tibiaMm: { readonly left: number; readonly right: number };
  readonly humerusMm: number;
};

export type Segment = {
  readonly fields: SegmentDraft;
  readonly events: readonly EventDraft[];
  readonly visits: readonly VisitDraft[];
  readonly operation: number;
};
export type Measured = BodyDraft & {
  readonly bodyDay: Day;
  readonly occasion: "before" | "end-of-distraction" | "final";
  readonly operation: number;
};

export type Score = Pick<ScoreRow, "scoreCode" | "scoreDay" | "scoreValue">;

export type Person = {
  readonly case: Case;
  readonly identity: Identity;
  readonly surgeons: readonly string[];
  readonly fields: PersonDraft;
  readonly body: Body;
  readonly segments: readonly Segment[];
  readonly measures: readonly Measured[];
  readonly scores: readonly Score[];
};
