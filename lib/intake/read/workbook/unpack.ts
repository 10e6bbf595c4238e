import { unzipSync } from "fflate/browser";

// a sheet at every limit of intake has some 100 MB of markup; a packed file that swells to more is no sheet of cases
const mostUnpackedBytes = 512 * 1024 * 1024;

export type Unpacked =
  | { readonly parts: ReadonlyMap<string, Uint8Array>; readonly why: null }
  | { readonly parts: null; readonly why: "broken" | "too-large" };

/**
 * The parts of markup of a packed workbook (ISO/IEC 29500-2), by name without the leading slash; pictures and macros are passed over.
 * Done at once, in this thread: a page's policy forbids workers made of text.
 */
export function unpack(bytes: Uint8Array): Unpacked {
  let size = 0;
  try {
    const filter = ({ name, originalSize }: { name: string; originalSize: number }) => {
      if (!/\.(?:xml|rels)$/i.test(name)) return false;
      size += originalSize;
      return size <= mostUnpackedBytes;
    };
    const parts = new Map(Object.entries(unzipSync(bytes, { filter })));
    return size > mostUnpackedBytes ? { parts: null, why: "too-large" } : { parts, why: null };
  } catch {
    return { parts: null, why: "broken" };
  }
}
