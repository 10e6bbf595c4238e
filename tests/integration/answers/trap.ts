import { aFemur, aPerson, rowsOf } from "./made";

/** Sixty days that don't depend on gain and twenty for each centimetre, with a spread of a few days: one line for everyone. */
const daysFor = (cm: number, i: number) => Math.round(60 + 20 * cm + ((i * 7) % 11) - 5);

/** Two groups on that one line, the first with short gains, the second with long ones; every third patient has both femora done. */
export function trap() {
  const segments = Array.from({ length: 48 }, (_, i) => {
    const short = i < 24;
    const cm = (short ? 2 : 6) + (i % 6) * 0.4;
    const sides = i % 3 === 0 ? (["left", "right"] as const) : (["left"] as const);
    return sides.map((side) =>
      aFemur(i + 1, {
        side,
        device: short ? "magnetic-nail" : "monolateral-fixator",
        gainMm: cm * 10,
        distractionEndDay: 7 + Math.round(cm * 10),
        consolidationDay: daysFor(cm, i + (side === "left" ? 0 : 5)),
      }),
    );
  }).flat();
  return rowsOf({ person: Array.from({ length: 48 }, (_, i) => aPerson(i + 1)), segment: segments });
}
