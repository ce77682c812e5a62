import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';

/** Ranges wide enough for any place on earth where an engine runs; a number outside is a slip of the finger. */
export const temperatureC = z
  .number()
  .check(
    z.minimum(-70, 'colder than any place on earth: expected -70 to 60 °C'),
    z.maximum(60, 'hotter than any place on earth: expected -70 to 60 °C'),
  );
export const pressureHpa = z
  .number()
  .check(z.minimum(450, 'expected 450 to 1100 hPa'), z.maximum(1100, 'expected 450 to 1100 hPa'));
/** Said by a person, so that an unusual pressure is asked about once only. */
export const pressureConfirmed = z
  .boolean()
  .check(about('True where a person has confirmed the pressure and its kind; it is not asked about again.'));
export const elevationM = z
  .number()
  .check(z.minimum(-430, 'expected -430 to 6000 m'), z.maximum(6000, 'expected -430 to 6000 m'));
export const relativeHumidity = z
  .number()
  .check(z.minimum(0, 'expected 0 to 1'), z.maximum(1, 'expected 0 to 1 (0.8 means 80 %)'));
export const jetSize = z
  .number()
  .check(z.minimum(0.1, 'a jet size is at least 0.1'), z.maximum(10_000, 'a jet size is at most 10000'));

/** Years in which local time is written in whole minutes everywhere; another year is a slip of the finger. */
const YEARS = /^(19[89]\d|20\d\d|21\d\d)-/;

/** Seconds may be left out, as ISO 8601 allows; the offset may not, since a clock time alone is no moment. */
export const time = z
  .union([z.iso.datetime({ offset: true }), z.iso.datetime({ offset: true, precision: -1 })], {
    error: 'expected an ISO 8601 time with offset or Z, such as 2027-01-16T19:30:00-06:00',
  })
  .check(z.refine((text) => YEARS.test(text), { message: 'expected a year from 1980 to 2199' }));
