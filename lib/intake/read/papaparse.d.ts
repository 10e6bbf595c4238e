// The library's published types pull Node's into every room that reads them; this room also runs in a browser and a worker.
declare module "papaparse/papaparse.min.js" {
  type ParseError = { readonly type: string; readonly code: string; readonly row?: number };
  type ParseOptions = {
    readonly delimiter: string;
    readonly newline: "\n" | "\r";
    readonly header: false;
    readonly dynamicTyping: false;
    readonly skipEmptyLines: false;
    readonly quoteChar: string;
  };
  const papa: { parse(text: string, options: ParseOptions): { readonly data: string[][]; readonly errors: readonly ParseError[] } };
  // biome-ignore lint/style/noDefaultExport: the library's own form
  export default papa;
}
