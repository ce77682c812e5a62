import { Fragment } from 'react';

/** Symbols as they are written by hand: "e_w" with its index below the line. */
export function Symbols({ text }: { readonly text: string }) {
  // Every second part is an index.
  return text.split(/_([A-Za-z0-9]+(?:,0)?)/).map((part, place) => {
    // biome-ignore lint/suspicious/noArrayIndexKey: parts of a text never move
    return place % 2 === 1 ? <sub key={place}>{part}</sub> : <Fragment key={place}>{part}</Fragment>;
  });
}
