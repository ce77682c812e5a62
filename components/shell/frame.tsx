'use client';

import type { ReactNode } from 'react';
import { NewVersionNotice } from '@/components/offline/new-version-notice';
import { StoreProvider } from '@/components/store/store-provider';
import { ToastProvider } from '@/components/ui/toast';
import { Asleep } from './asleep';
import { FocusKeeper } from './focus-keeper';
import { PostedNights } from './posted-nights';
import { StoreBanner } from './store-banner';
import { ThemeKeeper } from './theme-keeper';
import { TopBar } from './top-bar';

/** What stands around every page. */
export function Frame({ children }: { readonly children: ReactNode }) {
  return (
    <StoreProvider>
      <ToastProvider>
        <ThemeKeeper />
        <FocusKeeper />
        <TopBar />
        <Asleep />
        <StoreBanner />
        <NewVersionNotice />
        <PostedNights />
        {children}
      </ToastProvider>
    </StoreProvider>
  );
}
