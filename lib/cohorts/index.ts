// The cohort as JSON
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
export { CohortError, type Condition, canonicalWhere, checkWhere, fieldsNamed, isSet, parseWhere, type Where } from "./where";
