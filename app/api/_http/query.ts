import * as z from 'zod/mini';

/** A number as a query string carries it; an empty text is none, though JavaScript takes it for 0. */
export function numberText(
  words: string,
): z.ZodMiniPipe<z.ZodMiniString<string>, z.ZodMiniTransform<number, string>> {
  return z.pipe(
    z
      .string({ error: `is missing: expected ${words}` })
      .check(z.regex(/^[+-]?(\d+(\.\d*)?|\.\d+)$/, `expected ${words}`)),
    z.transform(Number),
  );
}

export const latitudeText = z.pipe(
  numberText('degrees from -90 to 90'),
  z.number().check(z.minimum(-90, 'expected -90 to 90'), z.maximum(90, 'expected -90 to 90')),
);
export const longitudeText = z.pipe(
  numberText('degrees from -180 to 180'),
  z.number().check(z.minimum(-180, 'expected -180 to 180'), z.maximum(180, 'expected -180 to 180')),
);

/** What follows the question mark of an address, with it; '' where there is none. */
export function searchOf(url: string): string {
  const at = url.indexOf('?');
  return at < 0 ? '' : url.slice(at);
}

/** The parameters of a query as an object; one that is given twice counts by its last. */
export function parameters(search: string): Readonly<Record<string, string>> {
  return Object.fromEntries(new URLSearchParams(search));
}
