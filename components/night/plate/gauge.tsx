import type { Machine } from '@/lib/carb/machine';
import { acrossOf, placeOf, sizeTicks } from '@/lib/night/across';
import type { MixtureNow } from '@/lib/standing/mixture';
import styles from './gauge.module.css';

type GaugeProps = { readonly machine: Machine; readonly mixture: MixtureNow; readonly size: number };

const percent = (share: number): string => `${(share * 100).toFixed(2)}%`;

/**
 * A slot with a bank at each end, ticks one jet size apart and a pointer at what is in. For the eye only: the same stands
 * below it in words.
 */
export function Gauge({ machine, mixture, size }: GaugeProps) {
  const across = acrossOf(machine);
  const { x, beyond } = placeOf(across, mixture.drift);
  return (
    <div className={styles.gauge} aria-hidden="true">
      <svg className={styles.slot} aria-hidden="true" width="100%" height="44">
        <line className={styles.floor} x1="0" x2="100%" y1="43" y2="43" />
        {[across.leanEdge, across.richEdge].map((edge) => (
          <line key={edge} className={styles.edge} x1={percent(edge)} x2={percent(edge)} y1="18" y2="44" />
        ))}
        {sizeTicks(machine, across, size).map((tick) => (
          <line
            key={tick}
            className={styles.tick}
            x1={percent(tick)}
            x2={percent(tick)}
            y1={tick === across.baseline ? 32 : 37}
            y2="44"
          />
        ))}
        <svg x={percent(x)} className={styles.free} aria-hidden="true">
          <path className={styles.pointer} d={POINTERS[beyond ?? 'within']} />
        </svg>
      </svg>
      <div className={styles.words}>
        <span>LEAN</span>
        <span className={styles.zero} style={{ insetInlineStart: percent(across.baseline) }}>
          baseline
        </span>
        <span>RICH</span>
      </div>
    </div>
  );
}

/** Down to the place, or sideways where it lies beyond the slot. */
const POINTERS = {
  within: 'M0 42L-11 20V4H11V20Z',
  lean: 'M-4 24L16 11V37Z',
  rich: 'M4 24L-16 11V37Z',
} as const;
