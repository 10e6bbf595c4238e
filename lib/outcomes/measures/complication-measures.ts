/** Measures of complications: events over a named denominator, shares, the worst class, and cumulative incidence. */
export const complicationMeasures = [
  { id: "complication-events-per-segment", title: "Events per segment", of: "segment", unit: "events/segment", kind: "rate" },
  { id: "complication-events-per-patient", title: "Events per patient", of: "person", unit: "events/patient", kind: "rate" },
  { id: "complication-events-per-10cm", title: "Events per 10 cm gained", of: "segment", unit: "events/10 cm", kind: "rate" },
  { id: "operations-per-segment", title: "Unplanned operations per segment", of: "segment", unit: "operations/segment", kind: "rate" },
  { id: "complication-segments-with-any", title: "Segments with any event", of: "segment", unit: "share", kind: "share" },
  { id: "complication-patients-with-any", title: "Patients with any event", of: "person", unit: "share", kind: "share" },
  { id: "complication-worst", title: "Worst class of a patient", of: "person", unit: "class", kind: "classes" },
  { id: "complication-incidence", title: "Cumulative incidence of a first event", of: "segment", unit: "share", kind: "curve" },
  {
    id: "complication-return-to-theatre",
    title: "Cumulative incidence of an unplanned return to theatre",
    of: "segment",
    unit: "share",
    kind: "curve",
  },
] as const;
export type ComplicationMeasure = (typeof complicationMeasures)[number];

const sentences: Readonly<Record<ComplicationMeasure["id"], string>> = {
  "complication-events-per-segment": "events over segments whose events were looked for",
  "complication-events-per-patient": "events over patients whose events were looked for",
  "complication-events-per-10cm": "events over centimetres gained, per 10 cm, of segments whose events were looked for",
  "operations-per-segment": "unplanned operations under anaesthesia over segments whose events, or whose serious events, were looked for",
  "complication-segments-with-any": "segments with at least one event, of those whose events were looked for",
  "complication-patients-with-any": "patients with at least one event, of those whose events were looked for",
  "complication-worst": "heaviest class of each patient under the scheme, of those whose events were looked for",
  "complication-incidence": "days from surgery to the first event; death competes; a planned implant removal ends the time at risk",
  "complication-return-to-theatre":
    "days from surgery to the first unplanned operation; death competes; a planned implant removal ends the time at risk",
};

export function complicationSentence({ id }: ComplicationMeasure): string {
  return `${sentences[id]}; a planned removal, exchange or release is no event, and an event that followed from another counts with it`;
}
