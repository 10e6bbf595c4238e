import { openRegistry } from "@/lib/registry";
import { aPerson, aSegment, personKey, rowsOf } from "../../integration/registry/rows";

const pick = <const T>(list: readonly T[], i: number): T => list[i % list.length] as T;

/** A registry of so many invented segments, two of each person, with what splits and clocks need. */
export async function filledRegistry(folder: string, segments: number): Promise<void> {
  const persons = Array.from({ length: Math.ceil(segments / 2) }, (_, i) => i);
  const sheet = Array.from({ length: segments }, (_, i) => i);
  const registry = await openRegistry(folder, { create: true });
  await registry.commit(
    rowsOf({
      person: persons.map((i) =>
        aPerson(i, {
          sex: i % 2 ? "female" : "male",
          indication: pick(["stature", "limb-length-discrepancy"], i),
          smoking: pick(["never", "ever", "now"], i),
        }),
      ),
      segment: sheet.map((i) => ({ ...aSegment(Math.floor(i / 2), course(i)), person: personKey(Math.floor(i / 2)) })),
    }),
    { at: "2026-01-31T09:30:00Z" },
  );
  await registry.close();
}

function course(i: number) {
  const gainMm = 25 + ((i * 7919) % 550) / 10;
  const distractionEndDay = 1006 + Math.round(gainMm);
  const consolidationDay = distractionEndDay + 20 + ((i * 104_729) % 97) + Math.round(gainMm / 2);
  return {
    side: i % 2 ? "left" : "right",
    bone: pick(["femur", "femur", "tibia"], Math.floor(i / 2)),
    surgeryYear: 2018 + (i % 7),
    surgeryQuarter: 1 + (i % 4),
    auditYear: 2018 + (i % 7),
    ageAtSurgeryYears: 8 + ((i * 31) % 40),
    growthPlates: pick(["open", "closed"], i),
    device: pick(["magnetic-nail", "monolateral-fixator", "hexapod-circular-fixator"], Math.floor(i / 3)),
    entry: pick(["piriformis", "trochanteric"], i),
    osteotomyTechnique: "drill-and-osteotome",
    osteotomySite: pick(["proximal", "distal"], i),
    osteotomyOrientation: pick(["transverse", "oblique"], i),
    plannedGainMm: Math.round(gainMm),
    procedure: "lengthening",
    distractionStartDay: 1006,
    distractionEndDay,
    lastNotHealedDay: consolidationDay - 28,
    lastFilmDay: consolidationDay,
    consolidationDay: i % 50 === 0 ? null : consolidationDay,
    lastFollowUpDay: consolidationDay + 200,
    consolidationCriterion: "three-of-four",
    endState: i % 50 === 0 ? null : "consolidated",
    gainMm,
    gainFinalMm: gainMm,
    eventsLookedFor: "fully",
  } as const;
}
