'use client';

import { type ReactNode, useEffect, useRef, useState } from 'react';
import { classNames } from './class-names';
import styles from './scroll-region.module.css';

type ScrollRegionProps = { readonly labelledBy: string; readonly children: ReactNode };

/** How far it goes on: to the end of the line, back to its start, or not at all. */
type Rest = { readonly before: boolean; readonly after: boolean };

const WHOLE: Rest = { before: false, after: false };

/** Scrolls sideways where its content is too wide; says so, and can then be reached by keyboard. */
export function ScrollRegion({ labelledBy, children }: ScrollRegionProps) {
  const region = useRef<HTMLElement>(null);
  const [rest, setRest] = useState(WHOLE);
  useEffect(() => {
    const element = region.current;
    if (!element || typeof ResizeObserver === 'undefined') return;
    const look = () => {
      const now = restOf(element);
      setRest((was) => (was.before === now.before && was.after === now.after ? was : now));
    };
    const observer = new ResizeObserver(look);
    observer.observe(element);
    // What is in it may become too wide while it keeps its own size.
    for (const child of element.children) observer.observe(child);
    element.addEventListener('scroll', look, { passive: true });
    return () => {
      observer.disconnect();
      element.removeEventListener('scroll', look);
    };
  }, []);
  const scrolls = rest.before || rest.after;
  return (
    <>
      {scrolls ? (
        // Ears and keys learn it from the region itself.
        <p className={styles.goesOn} aria-hidden="true">
          <span className={classNames(!rest.before && styles.not)}>← more</span>
          <span className={classNames(!rest.after && styles.not)}>more →</span>
        </p>
      ) : null}
      <section
        ref={region}
        className={classNames(styles.region, rest.before && styles.cutBefore, rest.after && styles.cutAfter)}
        aria-labelledby={labelledBy}
        tabIndex={scrolls ? 0 : undefined}
      >
        {children}
      </section>
    </>
  );
}

/** A pixel is rounding, not content. */
function restOf({ scrollLeft, scrollWidth, clientWidth }: HTMLElement): Rest {
  const left = scrollWidth - clientWidth;
  if (left < 1) return WHOLE;
  return { before: scrollLeft > 1, after: scrollLeft < left - 1 };
}
