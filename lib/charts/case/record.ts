/** The treatment of one segment for its figures. Every day is a number of days from its surgery. */
export type TreatmentForFigure = {
  /** `Left femur, case 17`. */
  readonly title: string;
  readonly phases: readonly PhaseForFigure[];
  readonly films: readonly { readonly day: number; readonly cortices: number }[];
  readonly moments: readonly MomentForFigure[];
  /** The last day on which the segment is known of: the line ends there. */
  readonly lastDay: number;
};
export type PhaseForFigure = {
  readonly phase: "latency" | "distraction" | "consolidation" | "rescue";
  readonly from: number;
  readonly to: number;
  /** Not ended when last seen on film. */
  readonly open: boolean;
};
export type MomentForFigure = {
  readonly kind: "event" | "planned" | "bearing" | "removal" | "seen";
  readonly day: number;
  /** What a reader hears: `stiffness, programme changed`. */
  readonly text: string;
};

/** The course of distraction of one segment beside its prescription. */
export type CourseForFigure = {
  readonly title: string;
  readonly points: readonly { readonly day: number; readonly mm: number; readonly by: "film" | "dial" | null }[];
  readonly prescribed: readonly { readonly day: number; readonly mm: number }[] | null;
  readonly plannedMm: number | null;
  readonly gained: { readonly day: number; readonly mm: number } | null;
};
