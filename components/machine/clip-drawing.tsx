import { CLIP_DRAWING_WORDS } from '@/lib/words/screw';
import styles from './drawing.module.css';

const GROOVES = [1, 2, 3, 4, 5] as const;
/** The one in the middle, as makers deliver most needles. */
const CLIPPED = 3;

const heightOf = (groove: number) => 8 + groove * 24;

/** The needle with its clip, and which way is richer. */
export function ClipDrawing() {
  return (
    <svg className={styles.drawing} viewBox="0 0 320 214" role="img" aria-label={CLIP_DRAWING_WORDS}>
      <path className={styles.solid} d="M72 14h16v152l-8 40-8-40z" />
      {GROOVES.map((groove) => (
        <g key={groove}>
          <path className={styles.groove} d={`M70 ${heightOf(groove)}h20`} />
          <text x="104" y={heightOf(groove) + 6}>
            {groove}
          </text>
        </g>
      ))}
      <path className={styles.clip} d={`M54 ${heightOf(CLIPPED)}h42`} />
      <text x="118" y={heightOf(CLIPPED) + 6}>
        the clip
      </text>
      <text className={styles.said} x="126" y={heightOf(1) + 6}>
        leanest
      </text>
      <text className={styles.said} x="126" y={heightOf(5) + 6}>
        richest
      </text>
      <path className={styles.way} d="M232 34v92M223 117l9 10 9-10" />
      <text className={styles.said} x="104" y="172">
        clip lower, needle higher:
      </text>
      <text className={styles.said} x="104" y="194">
        richer
      </text>
    </svg>
  );
}
