import type { Metadata } from 'next';
import { ClubPage } from '@/components/club/club-page';

export const metadata: Metadata = { title: 'Club · Heavy Air' };

export default function Page() {
  return <ClubPage />;
}
