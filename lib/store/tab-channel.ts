import * as z from 'zod/mini';
import { TABLES } from './records';
import type { StoreChange } from './store-type';

/** What tabs tell each other: that something changed, never the value. */
const messageSchema = z.union([
  z.strictObject({
    kind: z.enum(['put', 'removed']),
    table: z.enum(TABLES),
    id: z.string(),
    revision: z.int(),
  }),
  z.strictObject({ kind: z.literal('everything') }),
]);

export type TabMessage = z.output<typeof messageSchema>;

export type TabChannel = { readonly tell: (message: TabMessage) => void; readonly close: () => void };

/** Opens the line to the other tabs of this browser; without one, conflicts are still noticed when writing. */
export function openTabChannel(name: string, hear: (change: StoreChange) => void): TabChannel {
  if (typeof BroadcastChannel === 'undefined') return { tell: () => undefined, close: () => undefined };
  const channel = new BroadcastChannel(name);
  channel.onmessage = ({ data }: MessageEvent<unknown>) => {
    const message = messageSchema.safeParse(data);
    if (message.success) hear({ ...message.data, origin: 'other-tab' });
  };
  let isOpen = true;
  return {
    // A write may come to its end after its store was closed; the others notice then when they write.
    tell: (message) => {
      if (isOpen) channel.postMessage(message);
    },
    close: () => {
      isOpen = false;
      channel.close();
    },
  };
}
