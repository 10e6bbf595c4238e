// The cohort as JSON
export { canonicalWhere } from "./canonical";
export { CohortError, checkWhere, parseWhere } from "./check-where";
export { describeOutside, describeWhere, valueWords } from "./describe";
export { describeSplit, lowerFirst } from "./describe-split";
export { conditionField, conditionFieldIds, conditionUnit, isDerivedField } from "./fields";
export { groupWhere } from "./group-where";
export { type Look, matches } from "./matches";
export { binPlace, binWords, parseSplitField, type SplitField, splitValue } from "./split";
// The cohort as sentences
export { whereOf } from "./tree/from-tree";
export type { CohortNode, ConditionNode, GroupNode } from "./tree/node";
export { treeOf } from "./tree/to-tree";
export { valueOfText } from "./value-of-text";
export { type Condition, fieldsNamed, isSet, type Where } from "./where";
