import { percentFits } from "@/lib/stats";
import { type PrintedPercent, printedPercents } from "../external/printed-percents";

/** docs/printed-percents.md: percentages that publications print beside counts, and whether the two fit. */
export function printedPercentsPage(): string {
  const misfit = printedPercents.filter((one) => !percentFits(one).fits);
  return `${[
    "# Printed percentages beside their counts",
    opening(printedPercents.length, misfit.length),
    "## Percentages that aren't their counts'",
    table(
      ["what", "counts", "is", "printed", "would fit", "source"],
      misfit.map((one) => [
        one.what,
        countsOf(one),
        `${shown(percentFits(one).percent)} %`,
        `${one.printed.toFixed(one.digits)} %`,
        wouldFit(one),
        sourceOf(one),
      ]),
    ),
    "## Percentages that are",
    table(
      ["what", "counts", "printed", "source"],
      printedPercents
        .filter((one) => percentFits(one).fits)
        .map((one) => [one.what, countsOf(one), `${one.printed.toFixed(one.digits)} %`, sourceOf(one)]),
    ),
  ].join("\n\n")}\n`;
}

const opening = (
  all: number,
  misfit: number,
) => `Written by \`npm run docs\` from \`tests/external/printed-percents.json\`; each was read in the publication's abstract unless said otherwise.
Of ${all} percentages that were printed with their counts, ${misfit} can't have come from them. A misfit is a question to the publication and no verdict on it:
a case may have been left out of one item, or counted twice. That is why every share here stands with its numerator and denominator.
*Inferred*: the numerator isn't printed and was worked back from the percentage. The rule is \`percent-fits\` of [methods](methods.md).`;

function wouldFit(one: PrintedPercent): string {
  const { numerators, denominators } = percentFits(one);
  const over = numerators.length > 0 ? `${listed(numerators)} over ${one.n}` : `nothing over ${one.n}`;
  return denominators.length > 0 ? `${over}; ${one.x} over ${listed(denominators)}` : over;
}

function listed(counts: readonly number[]): string {
  return counts.length > 3 ? `${counts[0]} to ${counts.at(-1)}` : counts.join(" or ");
}

function countsOf({ x, n, counts }: PrintedPercent): string {
  return counts === "inferred" ? `${x}/${n} (inferred)` : `${x}/${n}`;
}

function sourceOf({ source, read }: PrintedPercent): string {
  return read === "abstract" ? source : `${source} (${read})`;
}

function shown(percent: number): string {
  return percent.toFixed(2);
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(" | ")} |`;
  return [line(heads), line(heads.map(() => "---")), ...rows.map(line)].join("\n");
}
