import styles from '@/components/ui/page.module.css';
import { Way } from '@/components/ui/way';

export default function NotFound() {
  return (
    <main className={styles.page}>
      <h1>There is no such page</h1>
      <p>The address may be old or mistyped.</p>
      <p>
        <Way href="/">Go to the night</Way>
      </p>
    </main>
  );
}
