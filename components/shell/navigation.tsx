'use client';

import { usePathname } from 'next/navigation';
import { useEffect, useRef } from 'react';
import styles from './navigation.module.css';
import { PAGES } from './pages';

/** The pages in a row; on a narrow screen behind one word, since the plan needs the room. */
export function Navigation() {
  const path = usePathname();
  const menu = useRef<HTMLDetailsElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a page was chosen, so the menu has done its work
  useEffect(() => {
    if (menu.current !== null) menu.current.open = false;
  }, [path]);
  if (PAGES.length < 2) return null;
  return (
    <nav aria-label="Pages">
      <div className={styles.row}>
        <PageLinks path={path} />
      </div>
      <details ref={menu} className={styles.menu}>
        <summary className={styles.word}>Pages</summary>
        <PageLinks path={path} />
      </details>
    </nav>
  );
}

function PageLinks({ path }: { readonly path: string }) {
  return (
    <ul className={styles.list}>
      {PAGES.map((page) => (
        <li key={page.href}>
          <a href={page.href} className={styles.link} aria-current={path === page.href ? 'page' : undefined}>
            {page.label}
          </a>
        </li>
      ))}
    </ul>
  );
}
