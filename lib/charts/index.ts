// biome-ignore-all assist/source/organizeImports: the door stands under headings, not in alphabetical order

// Scenes and drawing
export type { Anchor, Dash, Ink, Mark, Scene, Shape } from "./scene";
export { isCrowded } from "./draw/crowd";
export { drawSvg } from "./draw/draw-svg";
export { inks } from "./draw/inks";

// Numbers in words
export { type EstimateRecord, estimateText, intervalText } from "./say/estimate-text";
export { reasonsText, reasonWords } from "./say/excluded";
export { counted, grouped, countedIn, decimals, listed } from "./say/numbers";
export { type RowCounts, rowWords } from "./say/row-words";
export { type CountedOf, howMany, percentText, shareText, shownEstimate, shownInterval, shownLimits } from "./say/shown-estimate";
export { type ShownUnit, shownText, shownUnit, unitsFor, valueText, withUnit } from "./say/shown-unit";
export { type ClockUnit, daysPerMonth, type IndexUnit, indexText, indexUnits, inUnit } from "./say/units";

// What every figure has
export type { CaptionOptions, Figure, FigureOptions } from "./figure/figure";
export type { Estimated, FigureSource, GroupCounts, Limits, NoteForFigure, ShareForFigure } from "./figure/source";
export { groupsPerFrame, type Series, seriesOf } from "./series";
export { once } from "./figure/once";
export { checkScene, type SceneWarning } from "./check/check-scene";
export { type Column, count, estimate, number, span, tableFrom, words } from "./table/columns";
export { type DataTable, noValue, type TableColumn } from "./table/data-table";
export { figureCsv } from "./table/figure-csv";

// Healing
export { answerOf } from "./healing/answer";
export { captionOf } from "./healing/caption";
export { clusteringOf } from "./healing/clustering";
export { equalGainText } from "./healing/equal-gain";
export { type HealingFigureOptions, layoutHealing } from "./healing/layout-healing";
export type { EqualGain, HealingGroupForFigure, HealingMarkForFigure, HealingRecordForFigure } from "./healing/record";
export { countsText } from "./healing/say";
export { tableOf } from "./healing/table";

// Distribution of a number measure
export { distributionFigure } from "./distribution/figure";
export type { DistributionGroup, DistributionRecord, DistributionRow } from "./distribution/record";

// One case
export { hasCourse, layoutCourse } from "./case/layout-course";
export { layoutTimeline } from "./case/layout-timeline";
export type { CourseForFigure, MomentForFigure, PhaseForFigure, TreatmentForFigure } from "./case/record";

// Days against gain
export { daysAgainstGainFigure } from "./days-against-gain/figure";
export type { DaysAgainstGainGroup, DaysAgainstGainMark, DaysAgainstGainRecord, GainLine } from "./days-against-gain/record";

// Curves over time
export { consolidationCurveFigure, cumulativeIncidenceFigure } from "./curves/figure";
export type { CurveGroup, CurvePointForFigure, CurveRecord } from "./curves/record";

// Gain against plan
export { gainAgainstPlanFigure } from "./gain-against-plan/figure";
export type { GainPlanGroup, GainPlanMark, GainPlanRecord } from "./gain-against-plan/record";

// Limits of agreement
export { agreementFigure } from "./agreement/figure";
export type { AgreementGroup, AgreementRecord } from "./agreement/record";

// Fit of the model of time
export { normalPlotFigure } from "./normal-plot/figure";
export type { NormalPlotGroup, NormalPlotRecord } from "./normal-plot/record";

// Complications by type and class
export { complicationMatrixFigure } from "./complication-matrix/figure";
export type { ComplicationMatrixGroup, ComplicationMatrixRecord, ComplicationRow } from "./complication-matrix/record";

// Proportion before and after
export { proportionFigure } from "./proportion/figure";
export type { ProportionGroup, ProportionMark, ProportionRecord, ReadingSource } from "./proportion/record";

// Course of distraction
export { courseFigure } from "./course/figure";
export type { Course, CourseGroup, CourseRecord, LagPoint } from "./course/record";

// Comparisons
export { forestFigure } from "./forest/figure";
export type { ForestRecord, ForestRow } from "./forest/record";

// Case-mix balance
export { balanceFigure } from "./balance/figure";
export type { BalanceGroup, BalanceRecord, BalanceRow } from "./balance/record";

// Flow of exclusions
export { flowFigure } from "./flow/figure";
export type { FlowRecord, FlowStep } from "./flow/record";

// Follow-up
export { followUpFigure } from "./follow-up/figure";
export type { FollowUpGroup, FollowUpRecord, FollowUpWindowCounts } from "./follow-up/record";
