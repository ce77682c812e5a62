'use client';

import type { ReactNode } from 'react';
import { NewVersionNotice } from '@/components/offline/new-version-notice';
import { StoreProvider } from '@/components/store/store-provider';
import { FaultBoundary } from '@/components/ui/fault-boundary';
import { ToastProvider } from '@/components/ui/toast';
import { Asleep } from './asleep';
import { FocusKeeper } from './focus-keeper';
import { PostedNights } from './posted-nights';
import { SheetTitle } from './sheet-title';
import { StoreBanner } from './store-banner';
import { ThemeKeeper } from './theme-keeper';
import { TopBar } from './top-bar';
import { WentWrong } from './went-wrong';

const wentWrong = (error: unknown, retry: () => void) => <WentWrong error={error} retry={retry} />;

/** What stands around every page; where that breaks, its words stand alone. */
export function Frame({ children }: { readonly children: ReactNode }) {
  return (
    <FaultBoundary instead={wentWrong}>
      <StoreProvider>
        <ToastProvider>
          <ThemeKeeper />
          <FocusKeeper />
          <SheetTitle />
          <TopBar />
          <Asleep />
          <StoreBanner />
          <NewVersionNotice />
          <PostedNights />
          <FaultBoundary instead={wentWrong}>{children}</FaultBoundary>
        </ToastProvider>
      </StoreProvider>
    </FaultBoundary>
  );
}
