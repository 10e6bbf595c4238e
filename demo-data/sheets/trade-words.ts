import { labelOfCode } from "@/lib/codebook";
import type { EventDraft, PersonDraft, SegmentDraft } from "../scenario/types";

type Words<T extends string> = Readonly<Partial<Record<T, string>>>;

/** Codes as a unit writes them in its own sheet. A code without a word of its own is written as its label. */
const diagnoses: Words<NonNullable<PersonDraft["aetiology"]>> = {
  "constitutional-short-stature": "Familial short stature",
  "idiopathic-short-stature": "ISS",
  hypochondroplasia: "HCH",
  "other-dysplasia": "Skeletal dysplasia",
  turner: "Turner syndrome",
  "growth-hormone-deficiency": "GHD",
  "small-for-gestational-age": "SGA",
  "congenital-femoral-deficiency": "Congenital short femur",
  "post-traumatic": "Trauma",
  "post-infective": "Osteomyelitis",
  "growth-arrest": "Physeal arrest",
  enchondromatosis: "Multiple enchondromas",
  neurological: "Polio",
};
const indications: Words<NonNullable<PersonDraft["indication"]>> = {
  stature: "Short stature",
  "limb-length-discrepancy": "LLD",
  "deformity-with-shortening": "Deformity",
  "bone-loss": "Defect",
};
const smoking: Words<NonNullable<PersonDraft["smoking"]>> = { now: "Y", ever: "Ex", never: "N", unknown: "" };
/** Letters of the unit's own: the mapping says what they mean. */
export const consentLetters: Words<NonNullable<PersonDraft["permittedUse"]>> = {
  "research-with-consent": "R",
  "audit-only": "A",
  "research-by-approval": "P",
  withdrawn: "W",
};
const devices: Words<NonNullable<SegmentDraft["device"]>> = {
  "magnetic-nail": "Mag nail",
  "lengthening-over-nail": "LON",
  "lengthening-then-nailing": "LATN",
  "lengthening-then-plating": "LATP",
  "monolateral-fixator": "Rail",
  "circular-fixator": "Ring",
  "hexapod-circular-fixator": "Hexapod",
};
const entries: Words<NonNullable<SegmentDraft["entry"]>> = {
  piriformis: "Piriformis fossa",
  trochanteric: "GT",
  "tibial-below-patella": "Infrapatellar",
  "tibial-above-patella": "Suprapatellar",
  "not-applicable": "n/a",
};
const osteotomies: Words<NonNullable<SegmentDraft["osteotomyTechnique"]>> = {
  "drill-and-osteotome": "Multiple drill hole",
  "gigli-saw": "Gigli",
  "intramedullary-saw": "IM saw",
};
const complications: Words<EventDraft["eventType"]> = {
  "peroneal-palsy": "Drop foot",
  "pin-site-infection": "Pin infection",
  "deep-vein-thrombosis": "DVT",
  "locking-screw-failure": "Broken screw",
  stiffness: "Knee stiffness",
  nonunion: "Non-union",
};
const treatments: Words<NonNullable<EventDraft["handling"]>> = {
  nothing: "Observed",
  "advice-or-physiotherapy": "Physio",
  "programme-changed": "Rate slowed",
  "oral-drug": "Oral drug",
  "intravenous-drug": "IV antibiotics",
  "procedure-without-anaesthesia": "Bedside",
  "operation-under-anaesthesia": "Return to theatre",
  "implant-exchanged": "Nail exchange",
};

function word<T extends string>(words: Readonly<Partial<Record<T, string>>>): (code: T | null | undefined) => string {
  return (code) => (code === null || code === undefined ? "" : (words[code] ?? labelOfCode(code)));
}

export const said = {
  diagnosis: word(diagnoses),
  indication: word(indications),
  smoking: word(smoking),
  consent: word(consentLetters),
  device: word(devices),
  entry: word(entries),
  osteotomy: word(osteotomies),
  complication: word(complications),
  treatment: word(treatments),
  label: word<string>({}),
};
