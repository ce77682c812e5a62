/** Writes .next/brotli with the list that app/api/_serve/brotli.ts reads; says how many files that are. */
export function writeBrotli(
  output: string,
  open: string,
  pages: readonly { readonly route: string; readonly html: string }[],
): number;
