import type { Metadata } from 'next';
import { TrailPage } from '@/components/trail/trail-page';

export const metadata: Metadata = { title: 'Trail · Heavy Air' };

export default function Page() {
  return <TrailPage />;
}
