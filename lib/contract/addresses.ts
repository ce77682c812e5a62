import { z } from 'zod';

/** Where others on the network find a server; none where it listens to its own computer alone. */
export const addressesSchema = z.strictObject({ addresses: z.array(z.url()) });
