'use client';

import { useEffect } from 'react';
import { keepFocus } from '@/components/ui/keep-focus';

/** Whoever goes by keyboard or by ear never falls out of the page. */
export function FocusKeeper() {
  useEffect(() => keepFocus(document), []);
  return null;
}
