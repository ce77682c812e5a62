import * as z from 'zod/mini';
import { latitudeText, longitudeText, numberText } from '@/app/api/_http/query';
import { elevationM, time } from '@/lib/contract/numbers';

const place = {
  lat: latitudeText,
  lon: longitudeText,
  elevation: z.optional(z.pipe(numberText('metres'), elevationM)),
};

const MONTHS = 'months as numbers from 1 to 12, such as 12,1,2';
const CLOCK = 'clock hours such as 8-20';

const months = z.pipe(
  z
    .string({ error: `is missing: expected ${MONTHS}, or at` })
    .check(z.regex(/^(1[0-2]|[1-9])(,(1[0-2]|[1-9])){0,11}$/, `expected ${MONTHS}`)),
  z.transform((text) => text.split(',').map(Number)),
);

const ridingHours = z._default(
  z
    .pipe(
      z.pipe(
        z.string().check(z.regex(/^\d{1,2}-\d{1,2}$/, `expected ${CLOCK}`)),
        z.transform((text) => text.split('-').map(Number)),
      ),
      z.transform(([first = 0, last = 0]) => ({ first, last })),
    )
    .check(z.refine(({ first, last }) => first < last && last <= 24, `expected ${CLOCK}`)),
  { first: 8, last: 20 },
);

/** A season: how the riding hours of some months were in past years. */
export const seasonQuerySchema = z.strictObject({
  ...place,
  months,
  years: z._default(
    z.pipe(
      numberText('years from 1 to 5'),
      z.int().check(z.minimum(1, 'expected 1 to 5'), z.maximum(5, 'expected 1 to 5')),
    ),
    3,
  ),
  hours: ridingHours,
});

/** A moment: the air at a past time, for a baseline that was proven then. */
export const momentQuerySchema = z.strictObject({ ...place, at: time });
