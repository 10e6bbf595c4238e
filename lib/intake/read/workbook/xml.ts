import { Parser } from "saxen";

export type Attributes = Readonly<Record<string, string>>;
/** What is done at each element and text. Names come without the prefix of their namespace. */
export type XmlVisitor = {
  readonly open?: (name: string, attributes: () => Attributes) => void;
  readonly text?: (text: string) => void;
  readonly close?: (name: string) => void;
};

/** Markup that is not well-formed: the part of the workbook can't be read. */
export class BrokenMarkup extends Error {
  override readonly name = "BrokenMarkup";
}

/** Walks through markup once. @throws BrokenMarkup, which quotes nothing of it */
export function walkXml(xml: string, { open, text, close }: XmlVisitor): void {
  const parser = new Parser();
  const fail = () => {
    throw new BrokenMarkup("walkXml requires well-formed markup, received another kind");
  };
  parser.on("openTag", (name, attributes, decode) => open?.(localName(name), () => decoded(attributes(), decode)));
  parser.on("closeTag", (name) => close?.(localName(name)));
  parser.on("text", (value, decode) => text?.(decode(value)));
  parser.on("cdata", (value) => text?.(value));
  parser.on("error", fail);
  parser.parse(xml);
}

// the parser leaves entities of attributes as they are
function decoded(attributes: Attributes, decode: (text: string) => string): Attributes {
  if (!Object.values(attributes).some((value) => value.includes("&"))) return attributes;
  return Object.fromEntries(Object.entries(attributes).map(([name, value]) => [name, decode(value)]));
}

function localName(name: string): string {
  const colon = name.indexOf(":");
  return colon < 0 ? name : name.slice(colon + 1);
}

/** An attribute whatever the prefix of its namespace. @example attribute({ "r:id": "rId1" }, "id") // => "rId1" */
export function attribute(attributes: Attributes, name: string): string | null {
  const own = attributes[name];
  if (own !== undefined) return own;
  const prefixed = Object.keys(attributes).find((key) => localName(key) === name);
  return prefixed === undefined ? null : (attributes[prefixed] ?? null);
}
