'use client';

import { type RefObject, useEffect, useRef, useState } from 'react';

/** The width of an element in pixels, kept current; 0 until it has been measured. */
export function useWidth<E extends HTMLElement>(): {
  readonly ref: RefObject<E | null>;
  readonly width: number;
} {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    setWidth(Math.floor(element.clientWidth));
    if (typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}
