'use client';

import { type ReactNode, useEffect, useRef, useState } from 'react';
import styles from './scroll-region.module.css';

type ScrollRegionProps = { readonly labelledBy: string; readonly children: ReactNode };

/** Scrolls sideways where its content is too wide, and can then be reached by keyboard. */
export function ScrollRegion({ labelledBy, children }: ScrollRegionProps) {
  const region = useRef<HTMLElement>(null);
  const [scrolls, setScrolls] = useState(false);
  useEffect(() => {
    const element = region.current;
    if (!element || typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(() => setScrolls(element.scrollWidth > element.clientWidth));
    observer.observe(element);
    // What is in it may become too wide while it keeps its own size.
    for (const child of element.children) observer.observe(child);
    return () => observer.disconnect();
  }, []);
  return (
    <section
      ref={region}
      className={styles.region}
      aria-labelledby={labelledBy}
      tabIndex={scrolls ? 0 : undefined}
    >
      {children}
    </section>
  );
}
