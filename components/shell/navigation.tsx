'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import styles from './navigation.module.css';
import { PAGES } from './pages';

export function Navigation() {
  const path = usePathname();
  if (PAGES.length < 2) return null;
  return (
    <nav aria-label="Pages">
      <ul className={styles.list}>
        {PAGES.map((page) => (
          <li key={page.href}>
            <Link
              href={page.href}
              className={styles.link}
              aria-current={path === page.href ? 'page' : undefined}
            >
              {page.label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
