import type { Pilot } from '@/lib/carb/machine';
import { screwDrawingWords } from '@/lib/words/screw';
import styles from './drawing.module.css';

/** Where the screw of each kind sits, and which way is richer: a plan, no picture of any make. */
export function ScrewDrawing({ screw }: Pick<Pilot, 'screw'>) {
  const fuel = screw === 'fuel';
  return (
    <svg className={styles.drawing} viewBox="0 0 320 214" role="img" aria-label={screwDrawingWords(screw)}>
      <path className={styles.solid} d="M120 122h80v44a14 14 0 0 1-14 14h-52a14 14 0 0 1-14-14z" />
      <path className={styles.thin} d="M122 146h76" />
      <path d="M16 54h122M182 54h122M16 116h288" />
      <path className={styles.solid} d="M138 14h44v74h-44z" />
      <path className={styles.solid} d="M157 88h6l-3 44z" />
      <path className={styles.thin} d="M24 86h52M68 80l9 6-9 6" />
      {/* The screw of the other side is the same, seen in a mirror. */}
      <g transform={fuel ? undefined : 'translate(320) scale(-1 1)'}>
        <path className={styles.passage} d="M196 158h34v-58" />
        <path className={styles.passage} d={fuel ? 'M221 108l9-10 9 10' : 'M221 88l9 10 9-10'} />
        <path className={styles.solid} d="M232 140l16-6h30v12h-30z" />
        <path className={styles.solid} d="M278 128h16v24h-16z" />
        <path d="M286 128v24" />
        <path className={styles.way} d="M258 164h38M287 156l10 8-10 8" />
      </g>
      <text x="16" y="42">
        air box
      </text>
      <text x="304" y="42" textAnchor="end">
        engine
      </text>
      <text x="160" y="168" textAnchor="middle">
        fuel
      </text>
      <text className={styles.said} x={fuel ? 304 : 16} y="204" textAnchor={fuel ? 'end' : 'start'}>
        {fuel ? 'fuel screw out: richer' : 'air screw out: leaner'}
      </text>
    </svg>
  );
}
