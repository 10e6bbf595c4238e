// The cohort as JSON
export { describeWhere, valueWords } from "./describe";
export { conditionField, conditionFieldIds } from "./fields";
export { type Look, matches } from "./matches";
export { CohortError, type Condition, canonicalWhere, checkWhere, fieldsNamed, isSet, parseWhere, type Where } from "./where";
