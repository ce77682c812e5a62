'use client';

import { useState } from 'react';
import { useHash } from './use-hash';

/** Whether one of these names has stood in the address behind its `#`: what it opened stays open. */
export function useOpenedBy(openers: readonly string[]): boolean {
  const asked = openers.includes(useHash());
  const [open, setOpen] = useState(asked);
  if (asked && !open) setOpen(true);
  return open;
}
