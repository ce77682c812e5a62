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

/** On which page each heading of a PDF stands, counted from one; of one that was printed with its outline. */
export function headingPages(pdf: Buffer): ReadonlyMap<string, number> {
  const text = pdf.toString('latin1');
  const kids = /\/Type \/Pages\s[^>]*?\/Kids \[([^\]]*)\]/.exec(text)?.[1] ?? '';
  const pages = [...kids.matchAll(/(\d+) 0 R/g)].map(([, object]) => object);
  const headings = text.matchAll(/\/Title \(([^)]*)\)\s*\/Dest \[(\d+) 0 R/g);
  return new Map([...headings].map(([, title, object]) => [title ?? '', pages.indexOf(object) + 1]));
}
