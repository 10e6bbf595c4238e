import { dayOf, dmyOf, isoOf, partsOf } from "../scenario/calendar";
import { surgeons } from "../scenario/identity";
import type { Person } from "../scenario/types";
import { serialNo } from "./raw-columns";
import { type Row, rowsOf } from "./seven-years";

type Planted = { readonly kind: string; readonly as: readonly string[] };

/** Every identifier of the raw files, for whoever hunts for them in what was stored, logged or sent: as typed, and dates in each form. */
export function plantedIdentifiers(persons: readonly Person[]): { readonly about: string; readonly identifiers: readonly Planted[] } {
  const rows = rowsOf(persons).filter(({ segment }) => (segment.fields.surgeryDay ?? 0) >= dayOf(2022, 1, 1));
  const identifiers = [...surgeons.map((name) => ({ kind: "surgeon", as: [name, name.split(" ")[1] ?? name] })), ...rows.flatMap(ofRow)];
  const distinct = new Map(identifiers.map((one) => [`${one.kind} ${one.as.join(" ")}`, one]));
  return {
    about: "Invented. Names, numbers and dates of the raw files and of the two yearly sheets, in each form in which they are typed.",
    identifiers: [...distinct.values()],
  };
}

function ofRow(row: Row): readonly Planted[] {
  const { localId, nhsNo, surname, firstName, phone, email, dateOfBirth } = row.person.identity;
  return [
    { kind: "hospital-number", as: [localId, localId.replace(/^0+/, "")] },
    { kind: "nhs-number", as: [nhsNo, nhsNo.replaceAll(" ", "")] },
    { kind: "surname", as: [surname] },
    { kind: "first-name", as: [firstName] },
    { kind: "full-name", as: [`${firstName} ${surname}`, `${surname}, ${firstName}`] },
    { kind: "phone", as: [phone, phone.replaceAll(" ", "")] },
    { kind: "email", as: [email] },
    { kind: "serial-number", as: [serialNo(row)] },
    { kind: "date-of-birth", as: formsOf(dateOfBirth) },
    { kind: "surgery-date", as: formsOf(row.segment.fields.surgeryDay ?? 0) },
  ];
}

function formsOf(day: number): readonly string[] {
  const { year, month, day: ofMonth } = partsOf(day);
  return [isoOf(day), dmyOf(day, "/"), dmyOf(day, "."), `${ofMonth}/${month}/${year}`];
}
