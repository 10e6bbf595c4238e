/** What a curve is of: the words and the axis in which healing and complications differ. */
export type CurveKind = {
  readonly id: string;
  /** For errors: the name of the layout. */
  readonly layout: string;
  readonly title: string;
  /** Over the axis that stands up. */
  readonly share: string;
  /** What happened, as a participle: `healed`. */
  readonly done: string;
  /** Of the whole, or as far as the shares reach. */
  readonly whole: boolean;
  readonly method: string;
};

export const healingCurve: CurveKind = {
  id: "consolidation-curve",
  layout: "layoutConsolidationCurve",
  title: "share healed over time",
  share: "% healed",
  done: "healed",
  whole: true,
  method: "Share healed by day, the unhealed counted to their last film (Kaplan–Meier unless something competes)",
};

export const incidenceCurve: CurveKind = {
  id: "cumulative-incidence",
  layout: "layoutCumulativeIncidence",
  title: "share with a first event over time",
  share: "% with the event",
  done: "had the event",
  whole: false,
  method: "Cumulative incidence of the first event (Aalen–Johansen)",
};
