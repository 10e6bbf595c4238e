/** Fields that a file may hold and that are never stored and never sent (ids.md §2). */
export const fileOnlyFields = {
  localId: {
    label: "Local number",
    // an exact hospital number wins over a study number where a file has both
    aliases: [
      "hospital no",
      "hospital number",
      "hosp no",
      "hosp id",
      "mrn",
      "medical record number",
      "record no",
      "record number",
      "patient id",
      "patient no",
      "patient number",
      "pid",
      "unit no",
      "unit number",
      "chart no",
      "case note no",
    ],
    secondChoice: ["case no", "case id", "registry no", "registry id", "study id", "subject id", "id"],
  },
  dateOfBirth: { label: "Date of birth", aliases: ["dob", "d o b", "date of birth", "birth date", "birthdate", "birthday", "born"] },
  surgeonName: {
    label: "Surgeon",
    aliases: ["surgeon", "consultant", "operator", "lead surgeon", "first surgeon", "operating surgeon", "surgeon code"],
  },
} as const;
export type FileOnlyField = keyof typeof fileOnlyFields;

/** Headers of an index that a file may hold. It is compared with the computed ones and never stored. */
export const typedIndexHeaders: readonly string[] = [
  "healing index",
  "hi",
  "bhi",
  "bone healing index",
  "consolidation index",
  "ci",
  "efi",
  "external fixation index",
  "maturation index",
  "distraction index",
];

/** Headers of free text in which units keep their complications: shown in the tab to be coded, then dropped. */
export const commentHeaders: readonly string[] = ["comments", "comment", "notes", "remarks", "history", "free text", "narrative"];

/** National numbers: direct identifiers, used as local number only if the person says so. */
export const nationalNumberHeaders: readonly string[] = [
  "nhs no",
  "nhs number",
  "chi",
  "chi no",
  "chi number",
  "ihi",
  "ssn",
  "social security number",
  "sin",
  "medicare",
  "medicare no",
  "insurance no",
  "insurance number",
  "national id",
  "pps",
  "pps no",
];

/** Direct identifiers by header: always dropped, never offered for mapping. */
export const directIdentifierHeaders: readonly string[] = [
  "name",
  "patient name",
  "full name",
  "surname",
  "family name",
  "last name",
  "forename",
  "first name",
  "given name",
  "initials",
  "address",
  "street",
  "town",
  "postcode",
  "post code",
  "zip",
  "phone",
  "mobile",
  "tel",
  "telephone",
  "email",
  "e mail",
  "next of kin",
  "gp",
  "referring doctor",
  "serial no",
  "serial number",
  "lot no",
  "lot number",
  "udi",
  "image",
  "film",
  "photo",
  ...nationalNumberHeaders,
];

/** Names of a release in a column *releases* with a list, and the flag each fills. */
export const releaseWords = {
  "iliotibial band": "releaseIliotibialBand",
  itb: "releaseIliotibialBand",
  rectus: "releaseRectus",
  adductor: "releaseAdductors",
  adductors: "releaseAdductors",
  hamstring: "releaseHamstrings",
  hamstrings: "releaseHamstrings",
  gastrocnemius: "releaseGastrocnemius",
  gastroc: "releaseGastrocnemius",
  achilles: "releaseGastrocnemius",
  tal: "releaseGastrocnemius",
  "peroneal nerve": "releasePeronealNerve",
  "nerve decompression": "releasePeronealNerve",
  fascia: "releaseFascia",
  fasciotomy: "releaseFascia",
} as const;
