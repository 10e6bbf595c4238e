import { type CalendarDate, calendarDateOf, dayNumber } from "../strip";

const lastSerial = 73_050; // 31 December 2099
// the 1900 system counts a 29 February 1900 that never was (serial 60): from 61 on the epoch lies a day earlier
const epoch1900 = dayNumber(1899, 12, 31);
const epoch1904 = dayNumber(1904, 1, 1);

/**
 * The calendar day of a spreadsheet's serial number; `null` where there is none (below 1, the 29 February 1900 that never was, a fraction).
 * @example excelSerial(45731) // => { year: 2025, month: 3, day: 15 }
 */
export function excelSerial(serial: number, { system = 1900 }: { system?: 1900 | 1904 } = {}): CalendarDate | null {
  if (!Number.isInteger(serial) || serial > lastSerial) return null;
  if (system === 1904) return serial < 0 ? null : calendarDateOf(epoch1904 + serial);
  if (serial < 1 || serial === 60) return null;
  return calendarDateOf(epoch1900 + serial - (serial > 60 ? 1 : 0));
}
