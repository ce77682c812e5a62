import type { Metadata } from 'next';
import { ComparePage } from '@/components/compare/compare-page';

export const metadata: Metadata = { title: 'Compare · Heavy Air' };

export default function Page() {
  return <ComparePage />;
}
