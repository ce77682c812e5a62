import { Stack } from '@/components/ui/stack';
import { Way } from '@/components/ui/way';

export default function NotFound() {
  return (
    <main style={{ padding: 'var(--s5) var(--s4) var(--s8)', maxWidth: 'var(--page)', margin: '0 auto' }}>
      <Stack>
        <h1>There is no such page</h1>
        <p>The address may be old or mistyped.</p>
        <p>
          <Way href="/">Go to the night</Way>
        </p>
      </Stack>
    </main>
  );
}
