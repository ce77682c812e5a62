import type { Metadata } from 'next';
import { SetAsidePage } from '@/components/backup/set-aside-page';

export const metadata: Metadata = { title: 'Set aside · Heavy Air' };

export default function Page() {
  return <SetAsidePage />;
}
