'use client';

import { useLayoutEffect } from 'react';
import { usePreferences } from '@/components/store/use-preferences';
import { applyTheme } from './theme';

/** Shows the stored theme, also when another tab changes it. */
export function ThemeKeeper() {
  const { preferences, known } = usePreferences();
  const { theme, brightness } = preferences;
  useLayoutEffect(() => {
    if (known) applyTheme({ theme, brightness });
  }, [known, theme, brightness]);
  return null;
}
