export { ageAt, ageBanded } from "./age";
export { type CalendarDate, calendarDateOf, dayNumber, dayNumberOf, isCalendarDate, isLeapYear } from "./calendar-day";
export { dayOnLine, undatedSurgeryDay } from "./person-line";
export { auditYearOf, quarterOf } from "./year-parts";
