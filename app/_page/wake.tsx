import type { ComponentType } from 'react';
import { hydrateRoot } from 'react-dom/client';
import { Frame } from '@/components/shell/frame';
import { ONLY_AWAKE } from './only-awake';

const isAwaited = (fault: unknown): boolean =>
  fault instanceof Error && 'digest' in fault && fault.digest === ONLY_AWAKE;

/** Brings a page to life over the HTML that `drawPage` made of it. */
export function wakePage(Page: ComponentType): void {
  hydrateRoot(
    document.body,
    <Frame>
      <Page />
    </Frame>,
    {
      // What is only drawn in a browser is told to every browser as a fault of the drawing, and is none.
      onRecoverableError: (fault) => {
        if (!isAwaited(fault)) reportError(fault);
      },
    },
  );
}
