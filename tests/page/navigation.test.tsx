// @vitest-environment jsdom
import { act, cleanup, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { usePathname, useSearchParams } from '@/app/_page/navigation';

function Where() {
  const search = useSearchParams();
  return (
    <p>
      {usePathname()} {search.get('edit') ?? 'none'}
    </p>
  );
}

const words = () => screen.getByRole('paragraph').textContent;

describe('where a page is', () => {
  beforeEach(() => history.replaceState(null, '', '/machines'));
  afterEach(() => {
    cleanup();
    history.replaceState(null, '', '/');
  });

  it('follows what the page pushes and what it puts in its place', () => {
    render(<Where />);
    expect(words()).toBe('/machines none');
    act(() => history.pushState(null, '', '/machines?edit=new'));
    expect(words()).toBe('/machines new');
    act(() => history.replaceState(null, '', '/machines?edit=a%26b'));
    expect(words()).toBe('/machines a&b');
  });

  it('follows the back key', async () => {
    render(<Where />);
    act(() => history.pushState(null, '', '/machines?edit=new'));
    await act(async () => {
      const popped = new Promise((resolve) => addEventListener('popstate', resolve, { once: true }));
      history.back();
      await popped;
    });
    expect(words()).toBe('/machines none');
  });

  it('asks for nothing of a page that is gone', () => {
    const { unmount } = render(<Where />);
    unmount();
    expect(() => history.pushState(null, '', '/machines?edit=new')).not.toThrow();
    expect(location.search).toBe('?edit=new');
  });
});
