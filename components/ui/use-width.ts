'use client';

import { type RefObject, useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';

/**
 * The width of an element in pixels, kept current; 0 until it has been measured. While the page is printed it is
 * the one on paper, where one is told: a print must not follow the window it is made from.
 */
export function useWidth<E extends HTMLElement>(
  onPaper?: number,
): {
  readonly ref: RefObject<E | null>;
  readonly width: number;
} {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const measure = () => setWidth(Math.floor(element.clientWidth));
    // At once: the paper is laid out as soon as the event is over.
    const toPaper = () => {
      if (onPaper !== undefined) flushSync(() => setWidth(onPaper));
    };
    measure();
    window.addEventListener('beforeprint', toPaper);
    window.addEventListener('afterprint', measure);
    const observer =
      typeof ResizeObserver === 'undefined'
        ? null
        : new ResizeObserver(([entry]) => {
            if (entry !== undefined) setWidth(Math.floor(entry.contentRect.width));
          });
    observer?.observe(element);
    return () => {
      window.removeEventListener('beforeprint', toPaper);
      window.removeEventListener('afterprint', measure);
      observer?.disconnect();
    };
  }, [onPaper]);
  return { ref, width };
}
