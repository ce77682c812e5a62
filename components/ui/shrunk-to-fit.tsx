'use client';

import { type CSSProperties, type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import { classNames } from './class-names';
import styles from './shrunk-to-fit.module.css';

type ShrunkToFitProps = { readonly className?: string | undefined; readonly children: ReactNode };

/** As its contents would be, and 1: they have room. */
const ROOM = { scale: 1, height: 0 };

/** What is wider than its place is shown as much smaller as it has to be. It keeps its own measures, and its own on paper. */
export function ShrunkToFit({ className, children }: ShrunkToFitProps) {
  const frame = useRef<HTMLDivElement>(null);
  const contents = useRef<HTMLDivElement>(null);
  const [fit, setFit] = useState(ROOM);
  useLayoutEffect(() => {
    const [outer, inner] = [frame.current, contents.current];
    if (outer === null || inner === null || typeof ResizeObserver === 'undefined') return;
    const measure = () => {
      const [room, width, height] = [outer.clientWidth, inner.offsetWidth, inner.offsetHeight];
      const next = width <= room || width === 0 ? ROOM : { scale: room / width, height };
      setFit((before) => (before.scale === next.scale && before.height === next.height ? before : next));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(outer);
    observer.observe(inner);
    return () => observer.disconnect();
  }, []);
  const measures = { '--scale': fit.scale, '--height': `${fit.height}px` } as CSSProperties;
  return (
    <div ref={frame} className={classNames(fit.scale < 1 && styles.frame)} style={measures}>
      <div ref={contents} className={classNames(styles.contents, className)}>
        {children}
      </div>
    </div>
  );
}
