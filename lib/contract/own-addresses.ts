import * as z from 'zod/mini';
import { describe as about } from 'zod/v4/core';

/** Where others on the same network find the server that answers. */
export const ownAddressesSchema = z.strictObject({
  origins: z
    .array(z.url())
    .check(about('Addresses that open the app from another device, the likeliest first.')),
  heardByOthers: z.boolean().check(about('False where it listens to its own computer alone.')),
});

export type OwnAddresses = z.output<typeof ownAddressesSchema>;
