import type { Metadata } from 'next';
import { LogPage } from '@/components/log/log-page';

export const metadata: Metadata = { title: 'Run log · Heavy Air' };

export default function Page() {
  return <LogPage />;
}
