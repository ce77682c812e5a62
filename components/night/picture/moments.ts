import { createContext } from 'react';
import type { Instant } from '@/lib/time/instant';

/**
 * What moves over a drawn night: the present, and the hour a person has walked to. Handed past the charts to the two
 * lines that show it, so that the charts behind them are not drawn again.
 */
export type MomentsShown = { readonly now: Instant; readonly cursor: Instant | null };

/** null only outside the picture. */
export const Moments = createContext<MomentsShown | null>(null);
