const family = "Source Sans 3 Variable";
let face: Promise<string | null> | undefined;

/**
 * The drawing with its typeface inside: painted as a picture, or opened elsewhere, it sees no fonts of the page, and other letters are of
 * another width. Without the face it is shown in the next of its list. The drawing itself stays byte for byte what it was.
 */
export async function withFaces(svg: string): Promise<string> {
  face ??= readFace();
  const rule = await face.catch(() => null);
  return rule === null ? svg : svg.replace("<title>", `<style>${rule}</style><title>`);
}

async function readFace(): Promise<string | null> {
  const source = latinSource();
  if (source === null) return null;
  const reply = await fetch(source);
  if (!reply.ok) return null;
  return `@font-face{font-family:"${family}";font-weight:200 900;src:url(${await dataAddress(await reply.blob())}) format("woff2")}`;
}

/** The file of the face that holds latin letters and figures. */
function latinSource(): string | null {
  for (const sheet of document.styleSheets) {
    for (const rule of sheet.cssRules) {
      if (!(rule instanceof CSSFontFaceRule)) continue;
      const { style } = rule;
      const own = style.getPropertyValue("font-family").replaceAll('"', "");
      const address = /url\("?([^")]+)"?\)/.exec(style.getPropertyValue("src"))?.[1];
      const latin = /U\+0{0,4}-?0*ff\b/i.test(style.getPropertyValue("unicode-range").split(",")[0] ?? "");
      if (own === family && latin && address !== undefined) return new URL(address, sheet.href ?? location.href).href;
    }
  }
  return null;
}

function dataAddress(file: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error ?? new Error("the face could not be read"));
    reader.readAsDataURL(file);
  });
}
