'use client';

import { useEffect, useRef } from 'react';
import { AWAKE } from '@/lib/planner/early-start';
import styles from './asleep.module.css';
import { ASLEEP_ID } from './asleep-script';

declare global {
  /** The button that was pressed last before the page was awake; the page presses it as it wakes up. */
  var heavyAirPressed: HTMLButtonElement | null | undefined;
}

/** Says why the page stands still, where it does. A script shows it; the page hides it as soon as it wakes up. */
export function Asleep() {
  const words = useRef<HTMLDivElement>(null);
  useEffect(() => {
    document.documentElement.setAttribute(AWAKE, '');
    if (words.current !== null) words.current.hidden = true;
    const pressed = globalThis.heavyAirPressed;
    globalThis.heavyAirPressed = null;
    pressed?.click();
  }, []);
  return (
    <div ref={words} id={ASLEEP_ID} className={styles.asleep} role="alert" hidden suppressHydrationWarning>
      <p>
        <strong>This page has not started.</strong> Either the line is slow: wait a little, or reload. Or this
        browser is too old: Heavy Air needs Safari 16.4 (iOS 16.4), Chrome or Edge 111, or Firefox 111. Update
        it, or open this page on another phone.
      </p>
      <p>What you kept in this browser is not touched.</p>
    </div>
  );
}
