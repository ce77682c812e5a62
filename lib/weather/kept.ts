import type { Instant } from '@/lib/time/instant';

/** A value and until when it need not be asked for again. */
export type Kept<V> = { readonly value: V; readonly freshUntil: Instant };
