import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  ageAt,
  ageBanded,
  auditYearOf,
  calendarDateOf,
  dayNumber,
  dayNumberOf,
  dayOnLine,
  isCalendarDate,
  quarterOf,
  undatedSurgeryDay,
} from "../../../lib/intake/strip";

const date = (iso: string) => {
  const [year, month, day] = iso.split("-").map(Number);
  return { year: year ?? 0, month: month ?? 0, day: day ?? 0 };
};

describe("days of the calendar", () => {
  // the language's own calendar (ECMAScript, Date.UTC) counts milliseconds from the same day
  test("every day from 1900 to 2199 has the number that the language's UTC calendar gives it", () => {
    let day = Date.UTC(1900, 0, 1) / 86_400_000;
    for (; day <= Date.UTC(2199, 11, 31) / 86_400_000; day++) {
      const utc = new Date(day * 86_400_000);
      const expected = { year: utc.getUTCFullYear(), month: utc.getUTCMonth() + 1, day: utc.getUTCDate() };
      if (dayNumberOf(expected) !== day) throw new Error(`${utc.toISOString()} is not ${dayNumberOf(expected)}`);
      if (JSON.stringify(calendarDateOf(day)) !== JSON.stringify(expected)) throw new Error(`${day} is not ${utc.toISOString()}`);
    }
    expect(day).toBeGreaterThan(80_000);
  });

  // spreadsheets count 1970-01-01 as 25569 and 2024-03-09 as 45360 (common practice, no source)
  test("the serial numbers of spreadsheets agree", () => expect(dayNumber(2024, 3, 9)).toBe(45_360 - 25_569));

  test("number and day are each other's inverse", () => {
    fc.assert(fc.property(fc.integer({ min: -700_000, max: 2_900_000 }), (day) => dayNumberOf(calendarDateOf(day)) === day));
  });

  test.each([
    [1900, 2, 29],
    [2023, 2, 29],
    [2100, 2, 29],
    [2024, 4, 31],
    [2024, 0, 1],
    [2024, 13, 1],
    [2024, 1, 0],
    [2024, 1, 32],
    [2024, 1.5, 1],
    [0, 1, 1],
    [Number.NaN, 1, 1],
  ])("%d-%d-%d does not exist and is refused", (year, month, day) => {
    expect(isCalendarDate(year, month, day)).toBe(false);
    expect(() => dayNumber(year, month, day)).toThrow(RangeError);
  });

  test.each([
    [2000, 2, 29],
    [2024, 2, 29],
    [1970, 1, 1],
    [2024, 12, 31],
  ])("%d-%d-%d exists", (year, month, day) => expect(isCalendarDate(year, month, day)).toBe(true));

  test("a refused day is not repeated in the message", () => {
    expect(() => dayNumber(1987, 13, 4)).toThrow(/^dayNumber requires a day of the calendar, received one that does not exist$/);
  });

  test("calendarDateOf refuses a part of a day", () => expect(() => calendarDateOf(1.5)).toThrow(RangeError));
});

describe("age", () => {
  test.each([
    ["2000-06-15", "2018-06-14", 17],
    ["2000-06-15", "2018-06-15", 18],
    ["2000-02-29", "2019-02-28", 18],
    ["2000-02-29", "2019-03-01", 19],
    ["2000-02-29", "2020-02-28", 19],
    ["2000-02-29", "2020-02-29", 20],
    ["2024-01-31", "2024-01-31", 0],
    ["2000-12-31", "2001-01-01", 0],
  ])("born %s, on %s: %i completed years", (birth, at, years) => expect(Math.floor(ageAt(date(birth), date(at)))).toBe(years));

  // 182 of the 365 days from 1 March 2024 to 1 March 2025 lie before 30 August
  test("the part of a year counts days between birthdays", () => {
    expect(ageAt(date("2010-03-01"), date("2024-08-30"))).toBeCloseTo(14 + 182 / 365, 12);
  });

  test("a later day never gives a lower age", () => {
    const day = fc.integer({ min: -20_000, max: 20_000 });
    fc.assert(
      fc.property(day, fc.nat(30_000), (birth, later) => {
        const at = (days: number) => ageAt(calendarDateOf(birth), calendarDateOf(birth + days));
        return at(later + 1) > at(later) && at(later) < later / 365 + 1e-9;
      }),
    );
  });

  test("a day before birth is refused without naming either", () => {
    expect(() => ageAt(date("2010-03-01"), date("2010-02-28"))).toThrow(/^ageAt requires a day not before birth, received an earlier one$/);
  });

  // 45 CFR 164.514(b)(2)(i)(C): ages above 89 may be one category; tenths below 18 and completed years above are our choice
  test.each([
    [88, 88],
    [89, 89],
    [89.99, 89],
    [90, 90],
    [104, 90],
    [18, 18],
    [18.96, 18],
    [34.5, 34],
    [17.94, 17.9],
    [17.99, 17.9],
    [12.34, 12.3],
    [12.36, 12.4],
    [0.04, 0],
    [0, 0],
  ])("%d years are kept as %d", (years, kept) => expect(ageBanded(years)).toBe(kept));

  test("what is kept stays what it is when kept again", () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 130, noNaN: true }), (years) => ageBanded(ageBanded(years)) === ageBanded(years)));
  });

  test.each([-1, Number.NaN, Number.POSITIVE_INFINITY])("%d is no age", (years) => expect(() => ageBanded(years)).toThrow(RangeError));
});

describe("parts of a year", () => {
  test.each([
    ["2024-01-01", 1],
    ["2024-03-31", 1],
    ["2024-04-01", 2],
    ["2024-09-30", 3],
    ["2024-10-01", 4],
    ["2024-12-31", 4],
  ])("%s lies in quarter %i", (iso, quarter) => expect(quarterOf(date(iso))).toBe(quarter));

  test.each([
    ["2024-03-31", 4, 2023],
    ["2024-04-01", 4, 2024],
    ["2024-12-31", 4, 2024],
    ["2024-01-01", 1, 2024],
    ["2024-12-31", 1, 2024],
    ["2024-11-30", 12, 2023],
  ])("%s, audit year from month %i: %i", (iso, start, year) => expect(auditYearOf(date(iso), start)).toBe(year));

  test.each([0, 13, 1.5, Number.NaN])("an audit year can't start in month %d", (start) => {
    expect(() => auditYearOf(date("2024-01-01"), start)).toThrow(RangeError);
  });
  test("a quarter needs a month", () => expect(() => quarterOf({ year: 2024, month: 13, day: 1 })).toThrow(RangeError));
});

describe("the person's own line", () => {
  test("differences survive the shift, the days do not", () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer(), fc.integer({ min: 1, max: 36_524 }), (a, b, shift) => {
        return dayOnLine(b, shift) - dayOnLine(a, shift) === b - a && dayOnLine(a, shift) !== a;
      }),
    );
  });

  test.each([
    [2021, null, 20_210_001],
    [2021, 1, 20_210_001],
    [1998, 12, 19_980_012],
  ])("an undated operation of %i, episode %s, is labelled %i", (year, episode, label) =>
    expect(undatedSurgeryDay(year, episode)).toBe(label),
  );

  test.each([
    [1899, 1],
    [2200, 1],
    [2021.5, 1],
    [2021, 0],
    [2021, 10_000],
    [2021, 1.5],
  ])("year %d, episode %d is refused", (year, episode) => expect(() => undatedSurgeryDay(year, episode)).toThrow(RangeError));
});
