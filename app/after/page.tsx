import type { Metadata } from 'next';
import { AfterPage } from '@/components/after/after-page';

export const metadata: Metadata = { title: 'After the night · Heavy Air' };

export default function Page() {
  return <AfterPage />;
}
