import { withResolution } from "./png-resolution";
import { withFaces } from "./svg-faces";

/** A drawing's unit is a CSS pixel, of which 96 make an inch. */
const unitsPerInch = 96;
const slidePixelsPerUnit = 2;
const printDotsPerInch = 300;

/** Hands a text to the browser as a file. */
export function saveText(text: string, name: string, type: string): void {
  savePicture(new Blob([text], { type: `${type};charset=utf-8` }), name);
}

/** Hands a file to the browser. */
export function savePicture(file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** The drawing as a picture on paper, twice as fine as drawn, for a slide. */
export function pictureOf(svg: string): Promise<Blob> {
  return painted(svg, slidePixelsPerUnit);
}

/** The drawing as a picture of 300 dots an inch, and it says so itself: 880 units are 9.17 inches, 2 750 dots. */
export async function printPicture(svg: string): Promise<Blob> {
  const picture = await painted(svg, printDotsPerInch / unitsPerInch);
  const bytes = withResolution(new Uint8Array(await picture.arrayBuffer()), printDotsPerInch);
  return new Blob([bytes], { type: "image/png" });
}

async function painted(svg: string, pixelsPerUnit: number): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([await withFaces(svg)], { type: "image/svg+xml;charset=utf-8" }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(image.naturalWidth * pixelsPerUnit);
    canvas.height = Math.round(image.naturalHeight * pixelsPerUnit);
    paint(canvas, image);
    return await new Promise((resolve, reject) =>
      canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("the browser made no picture"))), "image/png"),
    );
  } finally {
    URL.revokeObjectURL(address);
  }
}

function paint(canvas: HTMLCanvasElement, image: HTMLImageElement): void {
  const context = canvas.getContext("2d");
  if (!context) throw new Error("the browser gave no canvas to paint on");
  context.fillStyle = "#FCFBF8";
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
}
