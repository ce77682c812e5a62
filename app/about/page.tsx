import type { Metadata } from 'next';
import { AboutPage } from '@/components/about/about-page';

export const metadata: Metadata = { title: 'How it works · Heavy Air' };

export default function Page() {
  return <AboutPage />;
}
