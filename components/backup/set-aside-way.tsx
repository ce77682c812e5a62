'use client';

import { useStoreHealth } from '@/components/store/store-provider';
import { Way } from '@/components/ui/way';
import { counted } from '@/lib/words/listing';

/** The way to what was set aside, where there is something. */
export function SetAsideWay() {
  const count = useStoreHealth()?.setAside.length ?? 0;
  return count === 0 ? null : (
    <Way href="/aside">{`Look at what is set aside (${counted(count, 'thing')})`}</Way>
  );
}
