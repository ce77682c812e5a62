/** Parsed values come out of their schema with keys in its order, so equal values have equal text. */
export const sameValue = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
