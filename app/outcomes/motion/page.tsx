import type { Metadata } from "next";
import { tellMotion } from "@/lib/reports";
import type { PageAsked } from "../../_page/asked";
import { measuredPlace } from "../_place/measured-place";

export const metadata: Metadata = { title: "Motion" };

const joints = [
  ["motion-knee-flexion", "knee flexion"],
  ["motion-knee-extension", "knee extension"],
  ["motion-ankle-dorsiflexion", "ankle dorsiflexion"],
  ["motion-hip-flexion", "hip flexion"],
] as const;
const moments = [
  ["lost", "lost at the worst"],
  ["lost-at-3-months", "lost at 3 months"],
  ["lost-at-6-months", "lost at 6 months"],
  ["lost-at-12-months", "lost at 12 months"],
  ["lost-at-24-months", "lost at 24 months"],
  ["regained", "regained since the worst"],
  ["final", "at last"],
] as const;
const [first, ...others] = joints.flatMap(([id, joint]) =>
  moments.map(([moment, words]) => ({ value: `${id}.${moment}`, text: `${joint} ${words}` })),
);

export default function Motion({ searchParams }: PageAsked) {
  return measuredPlace(
    {
      place: "motion",
      label: "Motion",
      opening: "How much was",
      joining: "in",
      wouldStand: "how much motion of knee and ankle was lost at each window, and how many were seen then",
      measures: [first ?? { value: "motion-knee-flexion.lost", text: "knee flexion lost at the worst" }, ...others],
      tell: tellMotion,
    },
    searchParams,
  );
}
