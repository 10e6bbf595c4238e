import type { Metadata } from "next";
import { tellAlignment } from "@/lib/reports";
import type { PageAsked } from "../../_page/asked";
import { measuredPlace } from "../_place/measured-place";

export const metadata: Metadata = { title: "Alignment" };

const config = {
  place: "alignment",
  label: "Measure",
  opening: "What was",
  joining: "in",
  tell: tellAlignment,
  wouldStand: "how the axis moved with length, and how often it ended outside the limits",
  measures: [
    { value: "alignment-axis-per-cm", text: "the change of mechanical axis per cm gained" },
    { value: "alignment-axis-change", text: "the change of mechanical axis" },
    { value: "alignment-axis-outside", text: "the share with the axis more than 10 mm outside" },
    { value: "alignment-angulation-outside", text: "the share with angulation above 5°" },
    { value: "alignment-rotation-outside", text: "the share with a rotation difference above 10°" },
  ],
} as const;

export default function Alignment({ searchParams }: PageAsked) {
  return measuredPlace(config, searchParams);
}
