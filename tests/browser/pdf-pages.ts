/** Pages of a PDF and the size of the first, in millimetres. */
export function pagesOf(pdf: Buffer) {
  const text = pdf.toString('latin1');
  const box = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/.exec(text);
  const millimetres = (points: string | undefined) => Math.round((Number(points) / 72) * 25.4);
  return {
    count: [...text.matchAll(/\/Type\s*\/Page\b(?!s)/g)].length,
    size: [millimetres(box?.[1]), millimetres(box?.[2])],
  };
}
