import * as z from 'zod';

/** A number as a query string carries it; an empty text is none, though JavaScript takes it for 0. */
export function numberText(words: string): z.ZodPipe<z.ZodString, z.ZodTransform<number, string>> {
  return z
    .string({ error: `is missing: expected ${words}` })
    .regex(/^[+-]?(\d+(\.\d*)?|\.\d+)$/, `expected ${words}`)
    .transform(Number);
}

export const latitudeText = numberText('degrees from -90 to 90').pipe(
  z.number().min(-90, 'expected -90 to 90').max(90, 'expected -90 to 90'),
);
export const longitudeText = numberText('degrees from -180 to 180').pipe(
  z.number().min(-180, 'expected -180 to 180').max(180, 'expected -180 to 180'),
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
