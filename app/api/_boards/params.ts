/** What the framework hands to the routes of one board. */
export type BoardContext = { readonly params: Promise<{ readonly id: string }> };

/** A hundred engines with full boxes and their hours fit. */
export const MOST_NIGHT_BYTES = 1_000_000;
/** A setting, or a push address with its keys. */
export const MOST_SMALL_BYTES = 16_000;
