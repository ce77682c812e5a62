'use client';

import { type RefObject, useEffect, useState } from 'react';
import { flushSync } from 'react-dom';

/** How far below the screen an element counts as near: what it needs can arrive while a thumb scrolls there. */
const MARGIN = '400px';

/** Whether an element has come near the screen, or is about to be printed; once it has, it stays so. */
export function useNear(ref: RefObject<Element | null>): boolean {
  const [near, setNear] = useState(false);
  useEffect(() => {
    const element = ref.current;
    if (near || element === null) return;
    const come = () => setNear(true);
    if (typeof IntersectionObserver === 'undefined') {
      come();
      return;
    }
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting)) come();
      },
      { rootMargin: MARGIN },
    );
    observer.observe(element);
    // At once: the paper is laid out as soon as the event is over.
    const print = () => flushSync(come);
    window.addEventListener('beforeprint', print);
    return () => {
      observer.disconnect();
      window.removeEventListener('beforeprint', print);
    };
  }, [ref, near]);
  return near;
}
