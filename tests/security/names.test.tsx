// @vitest-environment jsdom
import { cleanup, render } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { NightPreview } from '@/components/share/night-preview';
import { ToastProvider } from '@/components/ui/toast';
import { SHARED_AT, sharedEvening } from '@/tests/support/shared-evening';

afterEach(cleanup);

const NASTY = [
  '<img src=x onerror="window.hurt=1">',
  '"><script>window.hurt=1</script>',
  '<svg/onload=window.hurt=1>',
  '{{constructor.constructor("window.hurt=1")()}}',
  '</title><style>*{display:none}</style>',
  "javascript:window.hurt=1//'",
] as const;

describe('names that somebody else typed', () => {
  it.each(NASTY)('stand on the page of a shared night as the text they are: %s', (name) => {
    const plain = sharedEvening();
    const [machine] = plain.machines;
    const night = {
      ...plain,
      event: {
        ...plain.event,
        name,
        place: { name, latitude: 46.1, longitude: -89.2 },
        runs: plain.event.runs.map((run, i) => ({ ...run, name: `${name}${i}`.slice(0, 80) })),
      },
      machines: [{ ...machine!, machine: { ...machine!.machine, name } }],
    };
    const { container } = render(
      <ToastProvider>
        <NightPreview night={night} now={SHARED_AT} />
      </ToastProvider>,
    );
    // The event, its place, the machine, and the runs that the call names.
    expect(container.textContent.split(name).length - 1).toBeGreaterThanOrEqual(4);
    expect(container.querySelectorAll('script, style, img, svg, iframe, [onerror], [onload]')).toHaveLength(
      0,
    );
    expect([...container.querySelectorAll('a')].filter(({ href }) => !/^(https?:|$)/.test(href))).toEqual([]);
    expect('hurt' in window).toBe(false);
  });
});
