import type { Metadata } from "next";
import { type MeasuredQuestion, tellDistractionCourse, tellMeasured } from "@/lib/reports";
import type { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { measuredPlace } from "../_place/measured-place";

export const metadata: Metadata = { title: "Distraction" };

type Registry = Awaited<ReturnType<typeof registry>>;

function tell(from: Registry, question: MeasuredQuestion) {
  return question.measure === "course" ? tellDistractionCourse(from, question) : tellMeasured(from, question);
}

const config = {
  place: "distraction",
  label: "Measure",
  opening: "What was",
  joining: "in",
  wouldStand: "how bones were distracted, visit by visit, against what was prescribed, and how fast",
  measures: [
    { value: "course", text: "the course of distraction against prescription" },
    { value: "distraction-rate", text: "the rate of distraction" },
    { value: "distraction-rate-of-course", text: "the rate of distraction read from the visits" },
    { value: "latency", text: "the latency" },
    { value: "distraction-time", text: "the time of distraction" },
    { value: "distraction", text: "the distraction index" },
  ],
  tell,
} as const;

export default function Distraction({ searchParams }: PageAsked) {
  return measuredPlace(config, searchParams);
}
