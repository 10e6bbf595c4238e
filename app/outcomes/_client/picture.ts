const pixelsPerUnit = 2;
const svgType = "image/svg+xml;charset=utf-8";

/** Hands a text to the browser as a file. */
export function saveFile(text: string, name: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: svgType }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** The drawing as a picture on paper, twice as fine as drawn, for a slide. */
export async function pictureOf(svg: string): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: svgType }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = image.naturalWidth * pixelsPerUnit;
    canvas.height = image.naturalHeight * pixelsPerUnit;
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
