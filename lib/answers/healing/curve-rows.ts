import type { DayGroup } from "./readings";

/** A segment on the curve. */
export type OnCurve = {
  readonly person: number;
  readonly days: number;
  readonly outcome: "healed" | "censored" | "ended";
  /** Of the healed: the day of the last film that showed it unhealed; the day itself where none is known. */
  readonly unhealedDay: number;
  readonly gainMm: number | null;
  readonly rescued: boolean;
};

/** The rows that a curve can hold; one without a day, or on the day of surgery itself, can't be placed and is counted. */
export function curveRows({ rows, ended, excluded }: DayGroup) {
  const placed = rows
    .filter(({ days }) => days > 0)
    .map(
      ({ person, days, healed, filmIntervalDays, gainMm, rescued }): OnCurve => ({
        person,
        days,
        outcome: healed ? "healed" : "censored",
        unhealedDay: Math.max(0, days - (filmIntervalDays ?? 0)),
        gainMm,
        rescued,
      }),
    );
  const gone = ended.flatMap(({ person, days, gainMm }): OnCurve[] =>
    days === null || days <= 0 ? [] : [{ person, days, outcome: "ended", unhealedDay: days, gainMm, rescued: false }],
  );
  const reasons = { ...excluded };
  const add = (reason: string, n: number) => {
    if (n > 0) reasons[reason] = (reasons[reason] ?? 0) + n;
  };
  add("days-out-of-order", rows.length - placed.length);
  add("no-end", ended.length - gone.length);
  return { onCurve: [...placed, ...gone], excluded: reasons };
}
