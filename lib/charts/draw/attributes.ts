import { escapeXml } from "./escape";

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** A length as written: at most three decimals, no trailing zeros, never `-0`. */
export function cut(length: number): string {
  const text = String(Math.round(length * 1000) / 1000);
  return text === "-0" ? "0" : text;
}

/** ` x="1" fill="#000"`: every value goes through the one escaping function; what is undefined is left out. */
export function attributesOf(attributes: Attributes): string {
  let text = "";
  for (const name in attributes) {
    const value = attributes[name];
    if (value !== undefined) text += ` ${name}="${typeof value === "number" ? cut(value) : escapeXml(value)}"`;
  }
  return text;
}

/** The numbers of a path, cut as every other length is: those that are longer. */
export function cutPath(d: string): string {
  return d.replace(/-?\d*\.\d{4,}(?:e[-+]?\d+)?|-?\d+e[-+]?\d+/gi, (number) => cut(Number(number)));
}
