'use client';

import { useCallback, useEffect, useState } from 'react';

/** What is being printed: it stands on the page from the press of a button until the printer's window is shut. */
export function usePrinting<What>(): {
  readonly printing: What | null;
  readonly print: (what: What) => void;
} {
  const [printing, setPrinting] = useState<What | null>(null);
  useEffect(() => {
    if (printing === null) return;
    const done = () => setPrinting(null);
    window.addEventListener('afterprint', done);
    // What is printed is measured first, and laid out anew with what was found.
    const timer = setTimeout(() => window.print(), 0);
    return () => {
      clearTimeout(timer);
      window.removeEventListener('afterprint', done);
    };
  }, [printing]);
  const print = useCallback((what: What) => setPrinting(() => what), []);
  return { printing, print };
}
