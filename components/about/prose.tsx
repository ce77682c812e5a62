import { Children, type ReactNode } from 'react';
import { unitsTogether } from '@/lib/words/together';

/** A paragraph with numbers in it, each on the line of its unit. */
export function Prose({ children }: { readonly children: ReactNode }) {
  return <p>{Children.map(children, (part) => (typeof part === 'string' ? unitsTogether(part) : part))}</p>;
}
