'use client';

import type { ComponentProps } from 'react';
import { useOpenedBy } from '@/components/ui/use-opened-by';
import { Way } from '@/components/ui/way';
import { SetupSection } from './setup-section';

/** What opens it: its own link, and every form that stands in it. */
const OPENERS: readonly string[] = ['set-up', 'event', 'hours', 'machine', 'new-night'];

/** One link; what stands behind it stays open once it was asked for. */
export function SetupOnRequest(props: ComponentProps<typeof SetupSection>) {
  return useOpenedBy(OPENERS) ? <SetupSection {...props} /> : <Way href="#set-up">Set-up</Way>;
}
