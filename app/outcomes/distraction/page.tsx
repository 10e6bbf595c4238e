import type { Metadata } from "next";
import type { PageAsked } from "../../_page/asked";
import { measuredPlace } from "../_place/measured-place";

export const metadata: Metadata = { title: "Distraction" };

const config = {
  place: "distraction",
  label: "Measure",
  opening: "What was",
  joining: "in",
  wouldStand: "how fast bones were distracted: each segment a mark, the mean of each group with its interval",
  measures: [
    { value: "distraction-rate", text: "the rate of distraction" },
    { value: "distraction-rate-of-course", text: "the rate of distraction read from the visits" },
    { value: "latency", text: "the latency" },
    { value: "distraction-time", text: "the time of distraction" },
    { value: "distraction", text: "the distraction index" },
  ],
} as const;

export default function Distraction({ searchParams }: PageAsked) {
  return measuredPlace(config, searchParams);
}
