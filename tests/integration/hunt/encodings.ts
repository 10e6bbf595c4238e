import { leastInBytes } from "./cells";

/** A text as bytes in an encoding. `unit`: bytes a character of it, by which a neighbour is looked at; 0 where neighbours say nothing. */
export type Encoded = { readonly encoding: string; readonly bytes: Buffer; readonly unit: 0 | 1 | 2; readonly bigEndian: boolean };

/** Characters of base 64 below which a match is chance: pseudonyms and hashes are made of the same letters. */
const leastBase64 = 7;

/** A text in every encoding in which it could lie in a file, a log or a request; those that give the same bytes as UTF-8 are left out. */
export function encodingsOf(text: string): readonly Encoded[] {
  const utf8 = Buffer.from(text, "utf8");
  const little = Buffer.from(text, "utf16le");
  return [
    { encoding: "UTF-8", bytes: utf8, unit: 1, bigEndian: false },
    { encoding: "UTF-16LE", bytes: little, unit: 2, bigEndian: false },
    { encoding: "UTF-16BE", bytes: Buffer.from(little).swap16(), unit: 2, bigEndian: true },
    ...escapedForms(text, utf8),
    ...base64Forms("UTF-8", utf8),
    ...base64Forms("UTF-16LE", little),
  ];
}

const ascii = (encoding: string, text: string, unit: 0 | 1): Encoded => ({
  encoding,
  bytes: Buffer.from(text, "latin1"),
  unit,
  bigEndian: false,
});

function escapedForms(text: string, utf8: Buffer): readonly Encoded[] {
  const component = encodeURIComponent(text);
  const forms: Encoded[] = [
    ascii("every byte percent-encoded", [...utf8].map((byte) => `%${hexOf(byte)}`).join(""), 0),
    ascii("hexadecimal", utf8.toString("hex"), 0),
  ];
  if (component !== text) {
    forms.push(ascii("percent-encoded", component, 1), ascii("form-encoded", component.replaceAll("%20", "+"), 1));
    forms.push(
      ascii(
        "percent-encoded, small",
        component.replace(/%../g, (code) => code.toLowerCase()),
        1,
      ),
    );
  }
  if (utf8.length > text.length) forms.push(ascii("JSON escapes", escapes(text), 1));
  if (utf8.length > text.length && [...text].every((one) => one <= "\u00ff")) forms.push(ascii("Windows-1252", text, 1));
  return forms;
}

function base64Forms(of: string, bytes: Buffer): readonly Encoded[] {
  return ([0, 1, 2] as const).flatMap((offset) => {
    const stable = base64Inside(bytes, offset);
    if (stable.length < leastBase64) return [];
    const forms = [ascii(`base64 of ${of}, offset ${offset}`, stable, 0)];
    const forUrl = stable.replaceAll("+", "-").replaceAll("/", "_");
    if (forUrl !== stable) forms.push(ascii(`base64url of ${of}, offset ${offset}`, forUrl, 0));
    return forms;
  });
}

/** The characters of base 64 that depend on these bytes alone, when `offset` others stand before them. */
function base64Inside(bytes: Buffer, offset: number): string {
  const text = Buffer.concat([Buffer.alloc(offset), bytes]).toString("base64");
  return text.slice(Math.ceil((offset * 8) / 6), Math.floor(((offset + bytes.length) * 8) / 6));
}

const hexOf = (byte: number) => byte.toString(16).toUpperCase().padStart(2, "0");

function escapes(text: string): string {
  return [...text].map((one) => (one > "~" ? `\\u${(one.codePointAt(0) ?? 0).toString(16).padStart(4, "0")}` : one)).join("");
}

/** A number of digits as a database or program keeps numbers: whole, highest byte first (SQLite: 4, 6 or 8 bytes), and as a double. */
export function numericEncodingsOf(text: string): readonly Encoded[] {
  const digits = text.replace(/[ ./-]/g, "");
  if (!/^\d{6,15}$/.test(digits)) return [];
  const value = Number(digits);
  const whole = Buffer.alloc(8);
  whole.writeBigInt64BE(BigInt(value));
  const double = Buffer.alloc(8);
  double.writeDoubleBE(value);
  const of = (encoding: string, bytes: Buffer): Encoded => ({ encoding, bytes, unit: 0, bigEndian: true });
  const short = value < 2 ** 31 ? of("whole number of 4 bytes", whole.subarray(4)) : of("whole number of 6 bytes", whole.subarray(2));
  return [
    ...(value < leastInBytes ? [] : [short]),
    of("whole number of 8 bytes", whole),
    of("whole number, lowest byte first", Buffer.from(whole).reverse()),
    of("double", double),
  ];
}
