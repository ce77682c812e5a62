import { describe, expect, it, vi } from 'vitest';
import { handle } from '@/app/api/_http/handle';
import { problemOf } from '@/tests/api/ask';

describe('a fault of our own', () => {
  it('is told without its inside, logged without what was sent, and lets nothing through', async () => {
    const log = vi.mocked(console.error).mockImplementation(() => undefined);
    const request = new Request('http://localhost/api/plan?d=somebodys-night', {
      method: 'POST',
      body: 'somebodys-night',
    });
    const fault = new TypeError(
      "Cannot read properties of undefined (reading 'secret') at /srv/app/lib/x.ts:1",
    );
    const problem = await problemOf(await handle(request, () => Promise.reject(fault)));
    expect(problem).toEqual({
      type: 'about:blank',
      title: 'Internal Server Error',
      status: 500,
      detail: 'Something broke here, not in what you sent. Try again later.',
    });
    expect(log.mock.calls).toEqual([[fault]]);
    log.mockClear();
  });
});
