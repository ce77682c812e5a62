import type { Metadata } from 'next';
import { OpenPage } from '@/components/share/open-page';

export const metadata: Metadata = { title: 'Open a link · Heavy Air' };

export default function Page() {
  return <OpenPage />;
}
