import type { SegmentRow } from "@/lib/codebook";
import { between, type RowFact, type SegmentCheck } from "./segment-fact";

/** Devices whose frame comes off before the bone is healed by design: a nail or plate takes over. */
const takenOver: ReadonlySet<string | null> = new Set(["lengthening-over-nail", "lengthening-then-nailing", "lengthening-then-plating"]);

/** Consolidation before the end of distraction: premature, or a slip of typing. */
export const checkPrematureConsolidation: SegmentCheck = ({ distractionEndDay, consolidationDay, surgeryDay }) => {
  const days = between(distractionEndDay, consolidationDay);
  if (days === null || days >= 0 || (consolidationDay as number) < surgeryDay) return [];
  return [
    {
      code: "premature-consolidation-or-slip",
      field: "consolidationDay",
      found: `consolidation ${-days} days before the end of distraction`,
    },
  ];
};

/** Implant or frame out before the bone is known to be healed asks why, unless the row says. */
export const checkImplantOut: SegmentCheck = (row) => {
  if (row.implantOutReason !== null) return [];
  return [...outUnhealed(row, "implantRemovalDay"), ...(takenOver.has(row.device) ? [] : outUnhealed(row, "fixatorRemovalDay"))].slice(
    0,
    1,
  );
};

function outUnhealed(row: SegmentRow, field: "implantRemovalDay" | "fixatorRemovalDay"): readonly RowFact[] {
  const out = row[field];
  if (out === null) return [];
  const { consolidationDay, lastNotHealedDay } = row;
  const beforeHealing = consolidationDay !== null && out < consolidationDay;
  const onUnhealedFilm = lastNotHealedDay !== null && out <= lastNotHealedDay;
  if (!beforeHealing && !onUnhealedFilm) return [];
  const found = beforeHealing ? `${consolidationDay - out} days before consolidation` : "not later than the last film not healed";
  return [{ code: "implant-out-unhealed", field, found: `out ${found}` }];
}

/** Full weight before consolidation, and a last visit before it. */
export const checkAfterConsolidation: SegmentCheck = (row) => {
  const weight = between(row.fullWeightBearingDay, row.consolidationDay);
  const seen = between(row.lastFollowUpDay, row.consolidationDay);
  const facts: RowFact[] = [];
  if (weight !== null && weight > 0) {
    facts.push({
      code: "weight-bearing-before-consolidation",
      field: "fullWeightBearingDay",
      found: `${weight} days before consolidation`,
    });
  }
  if (seen !== null && seen > 0) {
    facts.push({ code: "follow-up-before-consolidation", field: "lastFollowUpDay", found: `${seen} days before consolidation` });
  }
  return facts;
};
