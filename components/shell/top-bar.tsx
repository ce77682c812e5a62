'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { DisplayDialog } from './display-dialog';
import { Navigation } from './navigation';
import styles from './top-bar.module.css';

export function TopBar() {
  const [open, setOpen] = useState(false);
  return (
    <header className={styles.bar}>
      <a href="/" className={styles.name}>
        Heavy Air
      </a>
      <Navigation />
      <Button kind="quiet" onClick={() => setOpen(true)}>
        Display
      </Button>
      <DisplayDialog open={open} onClose={() => setOpen(false)} />
    </header>
  );
}
