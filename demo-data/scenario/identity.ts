import type { Day } from "./calendar";
import { chanceOf } from "./chance";
import { seed } from "./parameters";
import type { Identity } from "./types";

// syllables put together so that no real person is named; accents are there to try the reading of old encodings
const beginnings = [
  "Zeld",
  "Quorn",
  "Brünn",
  "Ulverth",
  "Ombr",
  "Pellwy",
  "Tarqu",
  "Vexl",
  "Wystr",
  "Kløvr",
  "Ñandel",
  "Yzm",
  "Grœnd",
  "Thrakel",
  "Jélib",
  "Oxtr",
];
const endings = [
  "imore",
  "askett",
  "endry",
  "ovant",
  "ubrask",
  "elquist",
  "aruthe",
  "ingdell",
  "ossiter",
  "éville",
  "anthope",
  "uldane",
  "erwick-Demo",
  "ambrey",
  "ölscher",
  "yfentz",
  "orbane",
];
const firstNames = [
  "Zefrina",
  "Ombric",
  "Taldéa",
  "Ysolwen",
  "Quillan",
  "Brennoc",
  "Élodrine",
  "Marvoux",
  "Xandreth",
  "Pirrela",
  "Jorvane",
  "Liushka",
  "Corvandel",
  "Hélisande",
  "Tamsorin",
  "Wendrick",
  "Oriquelle",
  "Fendrax",
  "Ilsabet",
  "Mirandoc",
  "Zoëtta",
  "Garvinel",
  "Peregwyn",
  "Dasquine",
  "Rûvenna",
  "Althorix",
  "Quendolyn",
  "Struanda",
]; // prettier-ignore

/** Invented consultants, as the sheet's column of surgeons has them. */
export const surgeons: readonly string[] = ["Mr Quellthorpe", "Miss Ardvenna", "Mr Øxenbrow", "Ms Zymandell"];

/** Persons of the scenario as a sheet with names has them. Numbers lie in ranges kept for tests and drama: NHS 999 xxx xxxx, 07700 900xxx, example.org. */
export function identitiesOf(birthDays: readonly Day[]): readonly Identity[] {
  const chance = chanceOf(seed, "identities");
  const surnames = chance.shuffled(beginnings.flatMap((beginning) => endings.map((ending) => beginning + ending)));
  const numbers = chance.shuffled(Array.from({ length: 900 }, (_, index) => 100_000 + index * 997 + (index % 7)));
  const phones = chance.shuffled(Array.from({ length: 1000 }, (_, index) => `07700 900${String(index).padStart(3, "0")}`));
  return birthDays.map((dateOfBirth, index) => {
    const surname = surnames[index] ?? "";
    return {
      localId: `0${numbers[index]}`,
      nhsNo: nhsTestNumber(`999${String(100_000 + ((index * 7919) % 900_000))}`),
      surname,
      firstName: chance.pick(firstNames),
      phone: phones[index] ?? "",
      email: `person.${index + 1}@example.org`,
      dateOfBirth,
    };
  });
}

/** Nine digits with their check digit by modulus 11; the next nine digits where the check would be ten. */
function nhsTestNumber(nine: string): string {
  const sum = [...nine].reduce((total, digit, index) => total + Number(digit) * (10 - index), 0);
  const check = (11 - (sum % 11)) % 11;
  if (check === 10) return nhsTestNumber(String(Number(nine) + 1));
  return `${nine.slice(0, 3)} ${nine.slice(3, 6)} ${nine.slice(6)}${check}`;
}
