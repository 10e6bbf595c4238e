// Cases
export type { CourseVisit, SegmentCase } from "./case";
// Healing
export { type Course, courseOf } from "./healing/course";
export { healingStatus } from "./healing/status";
// Indices
export {
  type ClockEvent,
  type Denominator,
  definitionSentence,
  endsAtConsolidation,
  type IndexDefinition,
  indexDefinition,
  indexDefinitions,
  type Rescue,
} from "./indices/definition";
export { type Reading, readIndex } from "./indices/reading";
