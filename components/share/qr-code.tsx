import { encode } from 'uqr';
import styles from './share.module.css';

/** ISO/IEC 18004, version 40 with error correction L, in bytes. */
const MOST_BYTES = 2953;
/** Whole pixels for each module: a camera reads edges, not blends of them. */
const MODULE_PX = 4;
/** White around the code that a reader needs (ISO/IEC 18004: four modules). */
const QUIET = 4;

type QrCodeProps = { readonly text: string; readonly title: string };

/** A code that is drawn here: no picture service hears of the link. */
export function QrCode({ text, title }: QrCodeProps) {
  if (new TextEncoder().encode(text).length > MOST_BYTES)
    return <p>This link is too long for a code. Send the link or the file.</p>;
  const { data, size } = encode(text, { ecc: 'L', border: QUIET });
  const path = data.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : ''))).join('');
  return (
    <svg
      className={styles.code}
      viewBox={`0 0 ${size} ${size}`}
      width={size * MODULE_PX}
      height={size * MODULE_PX}
      role="img"
      shapeRendering="crispEdges"
    >
      <title>{title}</title>
      <rect width={size} height={size} fill="#ffffff" />
      <path d={path} fill="#000000" />
    </svg>
  );
}
