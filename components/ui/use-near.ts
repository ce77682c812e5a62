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
    return watchNear(element, (isNear) => isNear && setNear(true));
  }, [ref, near]);
  return near;
}

/** Whether an element that was drawn near the screen still is, or is about to be printed. */
export function useStillNear(ref: RefObject<Element | null>): boolean {
  const [near, setNear] = useState(true);
  useEffect(() => (ref.current === null ? undefined : watchNear(ref.current, setNear)), [ref]);
  return near;
}

function watchNear(element: Element, hear: (isNear: boolean) => void): () => void {
  if (typeof IntersectionObserver === 'undefined') {
    hear(true);
    return () => undefined;
  }
  const observer = new IntersectionObserver(
    (entries) => {
      for (const { isIntersecting } of entries) hear(isIntersecting);
    },
    { rootMargin: MARGIN },
  );
  observer.observe(element);
  // At once: the paper is laid out as soon as the event is over.
  const print = () => flushSync(() => hear(true));
  window.addEventListener('beforeprint', print);
  return () => {
    observer.disconnect();
    window.removeEventListener('beforeprint', print);
  };
}
