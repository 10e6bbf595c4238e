/**
 * Cautions that travel with a result. A method gives a code and its facts; the wording is here and nowhere else.
 */
export type NoteCode = keyof typeof wordings;

export interface Note {
  readonly code: NoteCode;
  readonly [fact: string]: string | number;
}

const wordings = {
  "too-few-for-interval": (note: Facts) =>
    `Too few patients for an interval (${note.patients ?? "fewer than 3"}${note.needed === undefined ? "" : `, ${note.needed} needed`}).`,
  "few-patients": (note: Facts) =>
    `Few patients: the interval rests on ${rounded(note.df)} degrees of freedom. The mean of patients is shown first.`,
  clustered: (note: Facts) => `Clustered by patient (CR2, df ${rounded(note.df)}).`,
  "bilateral-patients-differ": () =>
    "Patients with several bones differ from the others: the mean of bones and the mean of patients are more than half a standard error apart.",
  "shared-denominator": () => "An index falls with gain by arithmetic because some days don’t depend on gain. Compare days at equal gain.",
  "index-depends-on-gain": () => "The index depends on gain, so days aren’t proportional to it. Compare days at equal gain.",
  "heavily-censored": (note: Facts) =>
    `${note.censored === undefined ? "More than a tenth" : `${note.censored} of ${note.n}`} not healed at the last film: estimates on the index scale are description only.`,
  "fallback-used": (note: Facts) => `Another method than the usual one was used${note.because === undefined ? "" : `: ${note.because}`}.`,
  "plain-limit": (note: Facts) =>
    `The limit takes every row as another patient${note.because === undefined ? "" : ` (${note.because})`}; it is too narrow when patients have several.`,
  "few-at-risk": (note: Facts) => `Cut where fewer than ${note.needed ?? 5} were still at risk.`,
  "known-later": (note: Facts) => `${note.field ?? "A covariate"} is known only after the clock’s start, so no adjusted estimate is given.`,
  "in-model": (note: Facts) => `${note.field ?? "A covariate"} is in the model already, so no adjusted estimate is given.`,
  "split-known-later": (note: Facts) =>
    `${note.field ?? "The split"} is known only after the clock’s start: who healed early can’t be in every group. Start the clock at a landmark day.`,
  "scales-disagree": () =>
    "At equal gain the ratio and the straight lines disagree about a difference, so none is shown: gains of the groups hardly overlap, or their lines don’t pass through nothing.",
  "early-stops-listed": () => "Lengthenings stopped early are listed, never left out.",
  "technique-is-surgeon": () => "One surgeon did most of one technique: technique and surgeon can’t be told apart.",
  "constant-values": () => "All values are equal, so nothing can be said about their spread.",
  "not-estimable": (note: Facts) => `Not estimable${note.because === undefined ? "" : `: ${note.because}`}.`,
  "smallest-p-above-0.05": (note: Facts) =>
    `With so few patients the smallest p this test can give is ${note.smallest}; read the interval instead.`,
  "events-in-few-patients": (note: Facts) => `Events in ${note.patients} patient${note.patients === 1 ? "" : "s"} only.`,
  "patients-in-both": (note: Facts) => `${note.patients} patients have rows in both groups.`,
  "unhealed-left-out": (note: Facts) => `${note.unhealed} of ${note.n} had not healed and are left out.`,
  "log-normal": () => "Log-normal model of time: its fit is shown by the q–q figure.",
  "censored-and-missing": (note: Facts) => `${note.censored} of ${note.n} censored, ${note.missing} missing.`,
  competing: (note: Facts) => `Competing: ${note.what}. They end the time at risk and are not censored.`,
  "design-effect": (note: Facts) => `Design effect ${rounded(note.deff)}.`,
  "too-many-covariates": (note: Facts) =>
    `${counted(note.columns, "column")} for ${counted(note.patients, "patient")}: at most ${note.allowed} can be adjusted for, so no adjusted estimate is given.`,
  "left-out": (note: Facts) => `${note.n} rows left out because a covariate is not recorded.`,
  "not-reached": (note: Facts) => `${note.what ?? "The quantile"} was not reached.`,
} as const;

const counted = (n: string | number | undefined, word: string) => `${n} ${word}${n === 1 ? "" : "s"}`;

/** Every code, in the order of this page. */
export const noteCodes = Object.keys(wordings) as readonly NoteCode[];

type Facts = Readonly<Record<string, string | number | undefined>>;

/**
 * The sentence a reader sees.
 * @example noteText({ code: "clustered", df: 7.25 }) // => "Clustered by patient (CR2, df 7.3)."
 */
export function noteText(note: Note): string {
  return wordings[note.code](note);
}

function rounded(value: string | number | undefined): string {
  return typeof value === "number" ? String(Math.round(value * 10) / 10) : String(value ?? "not given");
}
