import type { EventDraft } from "./types";

export type Window = "theatre" | "distraction" | "consolidation" | "after";
export type Handling = NonNullable<EventDraft["handling"]>;
export type EventKind = {
  readonly eventType: EventDraft["eventType"];
  readonly weight: number;
  readonly on: "any" | "femur" | "tibia" | "nail" | "frame";
  readonly window: Window;
  readonly handling: readonly (readonly [Handling, number])[];
  /** Share with a lasting sequela. */
  readonly permanent: number;
};

const physio: EventKind["handling"] = [["advice-or-physiotherapy", 8], ["programme-changed", 2], ["operation-under-anaesthesia", 1]]; // biome-ignore format: a row a kind
const nerve: EventKind["handling"] = [
  ["programme-changed", 6],
  ["advice-or-physiotherapy", 3],
  ["operation-under-anaesthesia", 2],
];
const theatre: EventKind["handling"] = [
  ["operation-under-anaesthesia", 8],
  ["implant-exchanged", 2],
];

/** What may happen beside the course itself. Weights invented; equinus is the commonest event of stature series (Bone Joint Res 2020;9(7)). */
export const eventKinds: readonly EventKind[] = [
  { eventType: "equinus", weight: 16, on: "tibia", window: "distraction", handling: physio, permanent: 0.02 },
  { eventType: "stiffness", weight: 12, on: "femur", window: "distraction", handling: physio, permanent: 0.03 },
  { eventType: "joint-contracture", weight: 7, on: "any", window: "distraction", handling: physio, permanent: 0.03 },
  { eventType: "muscle-contracture", weight: 6, on: "femur", window: "distraction", handling: physio, permanent: 0 },
  { eventType: "sensory-deficit", weight: 6, on: "any", window: "distraction", handling: nerve, permanent: 0.05 },
  { eventType: "peroneal-palsy", weight: 6, on: "tibia", window: "distraction", handling: nerve, permanent: 0.08 },
  { eventType: "premature-consolidation", weight: 3, on: "any", window: "distraction", handling: theatre, permanent: 0 },
  {
    eventType: "axial-deviation",
    weight: 7,
    on: "any",
    window: "consolidation",
    handling: [
      ["nothing", 5],
      ["operation-under-anaesthesia", 4],
    ],
    permanent: 0.1,
  },
  {
    eventType: "delayed-union",
    weight: 5,
    on: "any",
    window: "consolidation",
    handling: [
      ["nothing", 4],
      ["programme-changed", 3],
    ],
    permanent: 0,
  },
  { eventType: "locking-screw-failure", weight: 6, on: "nail", window: "consolidation", handling: theatre, permanent: 0 },
  { eventType: "mechanism-failure", weight: 3, on: "nail", window: "distraction", handling: theatre, permanent: 0 },
  {
    eventType: "nail-bent",
    weight: 2,
    on: "nail",
    window: "consolidation",
    handling: [
      ["nothing", 3],
      ["implant-exchanged", 3],
    ],
    permanent: 0,
  },
  { eventType: "implant-migration", weight: 2, on: "nail", window: "consolidation", handling: theatre, permanent: 0 },
  {
    eventType: "superficial-infection",
    weight: 4,
    on: "nail",
    window: "distraction",
    handling: [
      ["oral-drug", 8],
      ["intravenous-drug", 2],
    ],
    permanent: 0,
  },
  {
    eventType: "pin-or-wire-broken",
    weight: 5,
    on: "frame",
    window: "consolidation",
    handling: [
      ["procedure-without-anaesthesia", 4],
      ["operation-under-anaesthesia", 5],
    ],
    permanent: 0,
  },
  {
    eventType: "pin-loose",
    weight: 4,
    on: "frame",
    window: "consolidation",
    handling: [
      ["procedure-without-anaesthesia", 5],
      ["operation-under-anaesthesia", 4],
    ],
    permanent: 0,
  },
  {
    eventType: "subluxation",
    weight: 3,
    on: "any",
    window: "distraction",
    handling: [
      ["programme-changed", 3],
      ["operation-under-anaesthesia", 4],
    ],
    permanent: 0.1,
  },
  { eventType: "regenerate-fracture", weight: 3, on: "any", window: "after", handling: theatre, permanent: 0.05 },
  { eventType: "pain-changing-plan", weight: 3, on: "any", window: "distraction", handling: [["programme-changed", 5]], permanent: 0 },
  {
    eventType: "sleep-disturbance",
    weight: 3,
    on: "any",
    window: "distraction",
    handling: [
      ["oral-drug", 4],
      ["advice-or-physiotherapy", 3],
    ],
    permanent: 0,
  },
  { eventType: "deep-vein-thrombosis", weight: 2, on: "any", window: "distraction", handling: [["oral-drug", 5]], permanent: 0 },
  {
    eventType: "wound-dehiscence",
    weight: 2,
    on: "any",
    window: "distraction",
    handling: [
      ["procedure-without-anaesthesia", 3],
      ["operation-under-anaesthesia", 2],
    ],
    permanent: 0,
  },
  { eventType: "incomplete-osteotomy", weight: 2, on: "any", window: "distraction", handling: theatre, permanent: 0 },
  {
    eventType: "fracture-in-theatre",
    weight: 1,
    on: "femur",
    window: "theatre",
    handling: [["operation-under-anaesthesia", 3]],
    permanent: 0,
  },
  {
    eventType: "compartment-syndrome",
    weight: 1,
    on: "tibia",
    window: "distraction",
    handling: [["operation-under-anaesthesia", 3]],
    permanent: 0.2,
  },
];
