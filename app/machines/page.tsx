import type { Metadata } from 'next';
import { Suspense } from 'react';
import { MachinesPage } from '@/components/machine/machines-page';

export const metadata: Metadata = { title: 'Machines · Heavy Air' };

export default function Page() {
  return (
    <Suspense>
      <MachinesPage />
    </Suspense>
  );
}
