import styles from './wall.module.css';

export function LeaveWall() {
  return (
    <a className={styles.leave} href="#briefing">
      Leave the wall
    </a>
  );
}
