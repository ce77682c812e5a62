import type { Metadata } from 'next';
import { ComparePage } from '@/components/compare/compare-page';

export const metadata: Metadata = { title: 'Fair comparison · Heavy Air' };

export default function Page() {
  return <ComparePage />;
}
