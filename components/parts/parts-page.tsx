import { Stack } from '@/components/ui/stack';
import { Acting } from './acting';
import { Asking } from './asking';
import { Telling } from './telling';

/** Every part of components/ui in every state, for those who build. */
export function PartsPage() {
  return (
    <main>
      <h1>Parts</h1>
      <Stack>
        <Acting />
        <Asking />
        <Telling />
      </Stack>
    </main>
  );
}
