import { type CSSProperties, useMemo } from 'react';
import { Button } from '@/components/ui/button';
import type { TextWidth } from '@/components/ui/text-width';
import type { Briefing } from '@/lib/club/briefing';
import { type WallLayout, type WallPart, wallLayout } from '@/lib/club/wall-pages';
import { WALL_TYPE, wallMeasures } from '@/lib/club/wall-tile';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import type { ClubNames } from '@/lib/words/club';
import { counted } from '@/lib/words/listing';
import { type WallBandWords, type WallTile, wallBands } from '@/lib/words/wall';
import { LeaveWall } from './leave-wall';
import { usePage } from './use-page';
import { type Room, useRoom } from './use-room';
import styles from './wall.module.css';
import { WallBandPart } from './wall-band';

type WallBoardProps = {
  readonly briefing: Briefing;
  readonly names: ClubNames;
  readonly zone: ClockZone;
  readonly now: Instant;
};

/** A screen this low or narrow is a phone in a hand: it scrolls, and nothing turns by itself. */
const HAND = { width: 700, height: 420 } as const;

/** What is to be done and what is in, over as many pages as it takes; the pages turn by themselves. */
export function WallBoard({ briefing, names, zone, now }: WallBoardProps) {
  const { ref, room } = useRoom<HTMLDivElement>();
  const bands = useMemo(() => wallBands(briefing, { names, zone, now }), [briefing, names, zone, now]);
  const layout = useMemo(() => (room === null ? null : layoutOf(bands, room)), [bands, room]);
  const pages = layout?.pages ?? [];
  const { page, held, next, hold } = usePage(pages.length);
  const byKey = new Map(bands.map((words) => [words.band.key, words]));
  const parts = (pages[page] ?? []).flatMap((part) => {
    const words = byKey.get(part.key);
    return words === undefined ? [] : [{ part, words }];
  });
  const jobs = parts.filter(({ words }) => words.kind !== 'in-now');
  const inNow = parts.filter(({ words }) => words.kind === 'in-now');
  const columns = layout?.columns ?? 1;
  return (
    <>
      <div ref={ref} className={styles.board} style={sizesOf(layout, room)}>
        {briefing.acts.length === 0 ? <p className={styles.quiet}>Nothing left to swap tonight.</p> : null}
        {jobs.length === 0 ? null : (
          <section
            aria-label="Next jobs"
            className={styles.bands}
            style={{ flexGrow: rowsOf(jobs, columns) }}
          >
            {jobs.map(({ part, words }) => (
              <WallBandPart key={part.key} part={part} words={words} columns={columns} />
            ))}
          </section>
        )}
        {inNow.length === 0 ? null : (
          <section
            aria-label="In the engines now"
            className={styles.bands}
            style={{ flexGrow: rowsOf(inNow, columns) }}
          >
            {inNow.map(({ part, words }) => (
              <WallBandPart key={part.key} part={part} words={words} columns={columns} />
            ))}
          </section>
        )}
      </div>
      <div className={styles.turning}>
        {(layout?.left ?? 0) > 0 ? <p>{`${counted(layout?.left ?? 0, 'job')} more later`}</p> : null}
        {pages.length < 2 ? null : (
          <>
            <p className={styles.pageNumber}>{`Page ${page + 1} of ${pages.length}`}</p>
            <Button kind="quiet" aria-pressed={held} onClick={() => hold(!held)}>
              {held ? 'Let pages turn' : 'Hold this page'}
            </Button>
            <Button kind="quiet" onClick={next}>
              Next page
            </Button>
          </>
        )}
        <LeaveWall />
      </div>
    </>
  );
}

type Layout = WallLayout & { readonly headWidth: number };

/** Sizes that are worked out, for the style sheet. */
function sizesOf(layout: Layout | null, room: Room | null): CSSProperties {
  const sizes = {
    '--figure': `${(room?.room.figure ?? 0) * (layout?.scale ?? 1)}px`,
    '--head': layout?.headWidth ?? 0,
  };
  return sizes as CSSProperties;
}

function rowsOf(
  parts: readonly { readonly part: WallPart; readonly words: WallBandWords }[],
  columns: number,
) {
  return parts.reduce(
    (rows, { part, words }) =>
      rows + Math.ceil((part.to - part.from) / Math.max(1, Math.floor(columns * words.band.share))),
    0,
  );
}

function layoutOf(bands: readonly WallBandWords[], { room, measure }: Room): Layout {
  const shown = bands.filter(({ tiles }) => tiles.length > 0);
  if (window.innerWidth < HAND.width || window.innerHeight < HAND.height)
    return {
      scale: Math.max(1, HAND_FIGURE / room.figure),
      columns: 1,
      left: 0,
      headWidth: 0,
      pages: [shown.map(({ band: { key, tiles } }) => ({ key, from: 0, to: tiles }))],
    };
  const measures = wallMeasures(textsOf(shown, measure));
  const laidOut = wallLayout(
    shown.map(({ band }) => band),
    room,
    measures,
  );
  return { ...laidOut, headWidth: measures.headWidth };
}

/** Of a phone in a hand [px]. */
const HAND_FIGURE = 28;
/** The longest that is said of how far away something is within a night. */
const LONGEST_AWAY = 'in 12 h 00 min';

function textsOf(bands: readonly WallBandWords[], measure: TextWidth): Parameters<typeof wallMeasures>[0] {
  const tiles = bands.flatMap((words) => words.tiles);
  return {
    jets: tiles.map((tile) => measure(jetsLine(tile))),
    names: tiles.map(({ name }) => ({
      whole: measure(name),
      longestWord: Math.max(...name.split(/\s+/).map(measure)),
    })),
    times: bands.map(({ before, head }) => beforeWidth(before, measure) + measure(head)),
    aways: [measure(LONGEST_AWAY)],
  };
}

/** Its words stand one under the other, before a time and smaller. */
function beforeWidth(before: string, measure: TextWidth): number {
  if (before === '') return 0;
  return WALL_TYPE.before * Math.max(...before.split(' ').map(measure)) + measure(' ');
}

function jetsLine(tile: WallTile): string {
  if (tile.kind === 'alarm') return '';
  const trim = tile.trim === null ? [] : [`trim ${tile.trim}`];
  return [...tile.jets.map(({ size }) => size), ...trim].join(' ');
}
