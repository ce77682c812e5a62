import * as z from 'zod';

/** Where others on the same network find the server that answers. */
export const ownAddressesSchema = z.strictObject({
  origins: z.array(z.url()).describe('Addresses that open the app from another device, the likeliest first.'),
  heardByOthers: z.boolean().describe('False where it listens to its own computer alone.'),
});

export type OwnAddresses = z.output<typeof ownAddressesSchema>;
