import { describe, expect, it, vi } from 'vitest';
import type { StoreChange } from '@/lib/store/store-type';
import { openTabChannel } from '@/lib/store/tab-channel';

describe('the line to other tabs', () => {
  it('tells them what changed, and once it is closed nobody, without a complaint', async () => {
    const heard: StoreChange[] = [];
    const other = openTabChannel('line', (change) => void heard.push(change));
    const own = openTabChannel('line', () => undefined);
    const change = { kind: 'put', table: 'events', id: 'a', revision: 1 } as const;
    own.tell(change);
    await vi.waitFor(() => expect(heard).toEqual([{ ...change, origin: 'other-tab' }]));
    own.close();
    own.tell(change);
    other.close();
    expect(heard).toHaveLength(1);
  });
});
