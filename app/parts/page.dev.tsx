import type { Metadata } from 'next';
import { PartsPage } from '@/components/parts/parts-page';

export const metadata: Metadata = { title: 'Parts' };

/** A page of `npm run dev` only: by its name no build takes it for one (next.config.ts). */
export default function Page() {
  return <PartsPage />;
}
