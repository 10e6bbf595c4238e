// The cohort as JSON
export { describeWhere, valueWords } from "./describe";
export { describeSplit, lowerFirst } from "./describe-split";
export { conditionField, conditionFieldIds, conditionUnit, isDerivedField } from "./fields";
export { groupWhere } from "./group-where";
export { type Look, matches } from "./matches";
export { binPlace, binWords, parseSplitField, type SplitField, splitValue } from "./split";
export { CohortError, type Condition, canonicalWhere, checkWhere, fieldsNamed, isSet, parseWhere, type Where } from "./where";
