import * as z from 'zod/mini';

/** An address that may become a link on a page: nothing but https, so that no address can run anything. */
export const webAddress = z
  .string()
  .check(
    z.maxLength(400),
    z.regex(/^https:\/\/[^\s"'<>]+$/, 'expected a web address that starts with https://'),
  );
