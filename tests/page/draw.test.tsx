import { Suspense } from 'react';
import { describe, expect, it, vi } from 'vitest';
import { drawPage } from '@/app/_page/draw';
import dynamic from '@/app/_page/dynamic';
import { useSearchParams } from '@/app/_page/navigation';
import { ONLY_AWAKE } from '@/app/_page/only-awake';

// As the build has it.
vi.mock('next/navigation', () => import('@/app/_page/navigation'));
vi.mock('next/dynamic', () => import('@/app/_page/dynamic'));

const Late = dynamic(() => Promise.resolve(() => <p>the part that comes later</p>), {
  ssr: false,
  loading: () => <p>Opening…</p>,
});

const Silent = dynamic(() => Promise.resolve(() => <p>the part that comes later</p>), { ssr: false });

function Broken(): React.ReactNode {
  throw new Error('no such jet');
}

function Searched() {
  return <p>{useSearchParams().get('edit')}</p>;
}

const body = async (Page: () => React.ReactNode, path = '/trail') => await drawPage(path, Page);

describe('a page as the build draws it', () => {
  it('has what waits in the place of what comes later, marked for the browser', async () => {
    const html = await body(() => <Late />);
    expect(html).toContain('<p>Opening…</p>');
    expect(html).not.toContain('the part that comes later');
    expect(html).toContain(ONLY_AWAKE);
  });

  it('leaves the place empty where nothing waits, and where only the address could say what stands there', async () => {
    for (const Part of [Silent, Searched]) {
      const html = await body(() => (
        <main>
          <h1>Machines</h1>
          <Suspense>
            <Part />
          </Suspense>
        </main>
      ));
      expect(html).toMatch(/<main><h1>Machines<\/h1>(<!--[^>]*-->|<template[^>]*><\/template>)*<\/main>/);
    }
  });

  it('stands in one piece and needs no script to be put together', async () => {
    const long = Array.from({ length: 3000 }, (_, line) => (
      <p key={String(line)}>line {line} of a long page</p>
    ));
    const html = await body(() => (
      <main>
        <Suspense fallback="wait">{long}</Suspense>
      </main>
    ));
    expect(html).toContain('2999<!-- --> of a long page</p>');
    expect(html).not.toMatch(/<script|hidden=""[^>]*id="S:/);
  });

  it('marks the way to the page itself, and none on a page that is not listed', async () => {
    const at = async (path: string) =>
      [...(await body(() => <main />, path)).matchAll(/href="([^"]+)"[^>]*aria-current="page"/g)].map(
        ([, href]) => href,
      );
    expect([...new Set(await at('/trail'))]).toEqual(['/trail']);
    expect([...new Set(await at('/'))]).toEqual(['/']);
    expect(await at('/_not-found')).toEqual([]);
  });

  it('fails with the fault of a page that throws', async () => {
    const words = await body(Broken).catch((fault: unknown) => String(fault));
    expect(words).toContain('no such jet');
  });
});
