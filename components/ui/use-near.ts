'use client';

import { type RefObject, useEffect, useState } from 'react';

/** Ahead of the screen's edge, so that what is asked for is mostly there when it is reached. */
const AHEAD = '400px 0px';

/** Whether an element has ever been near the screen, or was about to be printed. */
export function useNear(ref: RefObject<Element | null>): boolean {
  const [near, setNear] = useState(false);
  useEffect(() => {
    const element = ref.current;
    if (near || element === null) return;
    const reached = () => setNear(true);
    if (typeof IntersectionObserver === 'undefined') return reached();
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting)) reached();
      },
      { rootMargin: AHEAD },
    );
    observer.observe(element);
    window.addEventListener('beforeprint', reached);
    return () => {
      observer.disconnect();
      window.removeEventListener('beforeprint', reached);
    };
  }, [near, ref]);
  return near;
}
