'use client';

import dynamic from 'next/dynamic';
import { pagePlanner } from '@/lib/planner/page-planner';
import { Opening } from './opening';

const loadRoom = () => import('./night-room').then((module) => module.NightRoom);

/** Words first, then the planner, then the chart: each arrives when what stands before it can be read. */
const NightRoom = dynamic(loadRoom, { ssr: false, loading: Opening });

// Asked for while the page around it is still waking up, not after.
if (typeof window !== 'undefined') {
  void loadRoom();
  pagePlanner.wake();
}

export function NightPage() {
  return <NightRoom />;
}
