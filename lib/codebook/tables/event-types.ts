/** Event types by origin (ids.md §6). The origin is derived from the type. */
export const eventTypesByOrigin = {
  "soft-tissue": [
    "muscle-contracture",
    "equinus",
    "tendon-injury",
    "skin-necrosis-or-invagination",
    "compartment-syndrome",
    "haematoma",
    "wound-dehiscence",
    "scar",
    "heterotopic-ossification",
  ],
  joint: ["stiffness", "joint-contracture", "subluxation", "dislocation", "cartilage-damage", "patellar-instability", "ligament-laxity"],
  vascular: ["arterial-injury", "deep-vein-thrombosis", "pulmonary-embolism", "fat-embolism", "bleeding-transfused"],
  bone: [
    "premature-consolidation",
    "fibular-premature-consolidation",
    "incomplete-osteotomy",
    "delayed-union",
    "nonunion",
    "insufficient-regenerate",
    "axial-deviation",
    "malrotation",
    "translation",
    "regenerate-fracture",
    "other-fracture",
    "length-loss",
    "over-lengthening",
    "fibular-migration",
    "bone-necrosis",
    "osteolysis",
    "fracture-in-theatre",
  ],
  neurological: ["sensory-deficit", "motor-deficit", "peroneal-palsy", "complex-regional-pain", "paraparesis"],
  infection: ["pin-site-infection", "superficial-infection", "deep-infection", "osteomyelitis", "implant-infection", "sepsis"],
  device: [
    "mechanism-failure",
    "runaway",
    "failure-to-distract",
    "backtracking",
    "nail-bent",
    "nail-broken",
    "locking-screw-failure",
    "pin-or-wire-broken",
    "pin-loose",
    "frame-unstable",
    "corrosion",
    "controller-failure",
    "implant-migration",
  ],
  other: [
    "pain-changing-plan",
    "sleep-disturbance",
    "psychological",
    "anaesthetic",
    "medical",
    "weight-loss",
    "stopped-by-patient",
    "death-any-cause",
    "other-event",
  ],
} as const;

export type EventOrigin = keyof typeof eventTypesByOrigin;
export type EventType = (typeof eventTypesByOrigin)[EventOrigin][number];

const [firstType, ...furtherTypes] = Object.values(eventTypesByOrigin).flat();
export const eventTypes: readonly [EventType, ...EventType[]] = [firstType as EventType, ...furtherTypes];

const origins = new Map<string, EventOrigin>(
  Object.entries(eventTypesByOrigin).flatMap(([origin, types]) => types.map((type) => [type, origin as EventOrigin])),
);

/** @example originOf("equinus") // => "soft-tissue" */
export function originOf(type: EventType): EventOrigin {
  return origins.get(type) as EventOrigin;
}

export const eventTypeValues = {
  dvt: "deep-vein-thrombosis",
  pe: "pulmonary-embolism",
  crps: "complex-regional-pain",
  rsd: "complex-regional-pain",
  "drop foot": "peroneal-palsy",
  "foot drop": "peroneal-palsy",
  "pin infection": "pin-site-infection",
  "pin tract infection": "pin-site-infection",
  pti: "pin-site-infection",
  "non union": "nonunion",
  "equinus contracture": "equinus",
  "knee stiffness": "stiffness",
  "early consolidation": "premature-consolidation",
  "nail breakage": "nail-broken",
  "bent nail": "nail-bent",
  "screw failure": "locking-screw-failure",
  "broken screw": "locking-screw-failure",
} as const satisfies Record<string, EventType>;

/** In a complication column these (lower case, trimmed, not folded: a hyphen counts) mean that events were looked for and none was found. */
export const noEventValues: readonly string[] = ["none", "nil", "no", "-"];
