import { Fragment } from 'react';
import { classNames } from '@/components/ui/class-names';
import type { WallPart } from '@/lib/club/wall-pages';
import { together } from '@/lib/words/together';
import type { WallBandWords, WallTile } from '@/lib/words/wall';
import styles from './wall.module.css';

type WallBandPartProps = {
  readonly part: WallPart;
  readonly words: WallBandWords;
  readonly columns: number;
};

/** Everything of one moment that stands on this page; near it turns dark on light, so that it is seen from the door. */
export function WallBandPart({ part, words, columns }: WallBandPartProps) {
  const { band, head, before, away, count, urgency, kind, tiles } = words;
  const across = Math.max(1, Math.floor(columns * band.share));
  const shown = tiles.slice(part.from, part.to);
  const torn = shown.length < tiles.length;
  return (
    <div
      className={classNames(styles.band, styles[kind], styles[urgency])}
      data-urgency={urgency}
      style={{ flexGrow: Math.ceil(shown.length / across) }}
    >
      <div className={styles.when}>
        <h2 className={styles.time}>
          {before === '' ? null : <span className={styles.before}>{before}</span>} {head}
        </h2>
        {away === '' ? null : <p className={styles.away}>{away}</p>}
        {shown.length <= across ? null : (
          <p className={styles.count}>{torn ? `${part.from + 1} to ${part.to} of ${count}` : count}</p>
        )}
      </div>
      <ol
        className={styles.tiles}
        style={{ gridTemplateColumns: `repeat(${across}, minmax(0, 1fr))` }}
        start={part.from + 1}
      >
        {shown.map((tile) => (
          <Tile key={tile.key} tile={tile} />
        ))}
      </ol>
    </div>
  );
}

function Tile({ tile }: { readonly tile: WallTile }) {
  return (
    <li className={styles.tile}>
      <span className={styles.name}>
        {tile.name.split(/\s+/).map((word, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a word is its place
          <Fragment key={i}>
            <span>{word}</span>{' '}
          </Fragment>
        ))}
      </span>
      {tile.kind === 'alarm' ? (
        <span className={styles.alarm}>
          <b className={styles.word}>{tile.word}</b> {together(tile.text)}
        </span>
      ) : (
        <span className={styles.jets}>
          {tile.jets.map(({ size, changed }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a carburettor is its place
            <span key={i}>
              {i === 0 ? '' : ' '}
              {changed ? <u>{size}</u> : size}
            </span>
          ))}
          {tile.trim === null ? null : ` trim ${tile.trim}`}
        </span>
      )}
    </li>
  );
}
