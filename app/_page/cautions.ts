/** The cautions that stand on every page: a short form on screen, which opens to the whole; paper always carries the whole. */
export const shortCaution =
  "For audit, service evaluation, research and teaching on groups. Not a medical device; not for deciding, planning or monitoring one patient’s treatment.";

export const cautions: readonly string[] = [
  "For audit, service evaluation, research and teaching on groups; not a medical device; not for deciding, planning or monitoring one patient’s treatment: not rate, weight bearing, implant removal or suitability. A case’s page shows past data as last imported; it is neither the clinical record nor a recall list. Ranges test typing, not safety.",
  "A difference from print, between years, devices or surgeons is a question, not a verdict, and not for appraisal of a person without the unit’s governance. Height and proportion are descriptive, depend on the reference population, and are not aesthetic targets or grounds for surgery.",
  "Suspected device failure, embolism, death and other serious harm go to the official routes at once; nothing here reports them. Research use needs the permission recorded for each person. Follow local governance, ethics approval and data-protection law; clinical questions belong to licensed practitioners.",
  "Removing identifiers lowers the risk of recognising a person and does not end it: rare conditions, extreme statures and small units need a person’s judgement before anything is published.",
];
