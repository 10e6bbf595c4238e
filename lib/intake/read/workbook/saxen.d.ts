// The library ships no types; these are the parts of it that are used here.
declare module "saxen" {
  export class Parser {
    on(
      event: "openTag",
      take: (
        name: string,
        attributes: () => Readonly<Record<string, string>>,
        decode: (text: string) => string,
        selfClosing: boolean,
      ) => void,
    ): this;
    on(event: "closeTag", take: (name: string) => void): this;
    on(event: "text", take: (value: string, decode: (text: string) => string) => void): this;
    on(event: "cdata", take: (value: string) => void): this;
    on(event: "error", take: (error: Error) => void): this;
    parse(xml: string): void;
  }
}
