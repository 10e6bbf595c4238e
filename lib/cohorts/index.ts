// The cohort as JSON
export { describeWhere, valueWords } from "./describe";
export { conditionField, conditionFieldIds, isDerivedField } from "./fields";
export { type Look, matches } from "./matches";
export { binPlace, parseSplitField, type SplitField, splitValue } from "./split";
export { CohortError, type Condition, canonicalWhere, checkWhere, fieldsNamed, isSet, parseWhere, type Where } from "./where";
