'use client';

import { type ComponentProps, useState } from 'react';
import { useHash } from '@/components/ui/use-hash';
import { Way } from '@/components/ui/way';
import { SetupSection } from './setup-section';

/** What opens it: its own link, and every form that stands in it. */
const OPENERS: readonly string[] = ['set-up', 'event', 'hours', 'machine', 'new-night'];

/** One link; what stands behind it stays open once it was asked for. */
export function SetupOnRequest(props: ComponentProps<typeof SetupSection>) {
  const hash = useHash();
  const asked = OPENERS.includes(hash);
  const [open, setOpen] = useState(asked);
  if (asked && !open) setOpen(true);
  return open ? <SetupSection {...props} /> : <Way href="#set-up">Set-up</Way>;
}
