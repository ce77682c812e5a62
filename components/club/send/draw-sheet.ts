import type { SheetPicture } from '@/lib/share/sheet-picture';
import { type MeasureText, sheetPicture } from '@/lib/share/sheet-picture';
import type { SheetRow } from '@/lib/words/sheet-rows';

/** A PNG of a sheet, drawn here; null where the browser gives no canvas or makes no picture of it. */
export async function drawSheet(rows: readonly SheetRow[]): Promise<Blob | null> {
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (pen === null) return null;
  // Letters come from the page's own face, once it is there.
  await document.fonts.ready;
  const family = getComputedStyle(document.body).fontFamily;
  const fontOf = (size: number, bold: boolean): string => `${bold ? 700 : 400} ${size}px ${family}`;
  const measure: MeasureText = (text, size, bold) => {
    pen.font = fontOf(size, bold);
    return pen.measureText(text).width;
  };
  const picture = sheetPicture(rows, measure);
  draw(canvas, pen, picture, fontOf);
  return new Promise((made) => canvas.toBlob(made, 'image/png'));
}

function draw(
  canvas: HTMLCanvasElement,
  pen: CanvasRenderingContext2D,
  { width, height, texts }: SheetPicture,
  fontOf: (size: number, bold: boolean) => string,
): void {
  canvas.width = width;
  canvas.height = height;
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, width, height);
  pen.fillStyle = '#000000';
  for (const { text, x, y, size, bold } of texts) {
    pen.font = fontOf(size, bold);
    pen.fillText(text, x, y);
  }
}
