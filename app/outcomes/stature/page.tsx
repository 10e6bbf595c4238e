import type { Metadata } from "next";
import { tellStature } from "@/lib/reports";
import type { PageAsked } from "../../_page/asked";
import { measuredPlace } from "../_place/measured-place";

export const metadata: Metadata = { title: "Stature" };

const config = {
  place: "stature",
  label: "Measure",
  opening: "What was",
  joining: "in",
  tell: tellStature,
  wouldStand: "the stature that patients gained against what was planned, and whether the legs ended equal",
  measures: [
    { value: "stature-gain", text: "the stature gained" },
    { value: "stature-gain-error", text: "the stature gained less the plan" },
    { value: "residual-difference", text: "the difference of the legs left over" },
    { value: "stature-z.before", text: "z of stature before" },
    { value: "stature-z.after", text: "z of stature after" },
    { value: "stature-centile.after", text: "the centile of stature after" },
  ],
} as const;

export default function Stature({ searchParams }: PageAsked) {
  return measuredPlace(config, searchParams);
}
