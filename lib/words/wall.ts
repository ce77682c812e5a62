import type { Setting } from '@/lib/carb/machine';
import { sameMains } from '@/lib/carb/same-setting';
import type { Briefing } from '@/lib/club/briefing';
import { type Due, dueTogether, isNextWork, type Urgency, urgencyOf } from '@/lib/club/due';
import type { WallBand } from '@/lib/club/wall-pages';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { NO_BREAK_SPACE } from '@/lib/units/format';
import { alarmText, type ClubNames, isLoud } from './club';
import { countdown } from './countdown';
import { counted } from './listing';
import { planClock } from './runs';
import { PUT_IN } from './settings';
import { clockText } from './times';

/** What is done where trims alone are turned. */
const TURN = 'Turn';

/** One racer on the wall: what is or goes in, or what is wrong. */
export type WallTile = { readonly key: string; readonly name: string } & (
  | { readonly kind: 'jets'; readonly jets: readonly WallJet[]; readonly trim: number | null }
  | { readonly kind: 'alarm'; readonly word: string; readonly text: string }
);

/** One jet, and whether it is another than the one that is in. */
export type WallJet = { readonly size: string; readonly changed: boolean };

/** A band of the wall in words; `band` is what its pages are laid out by. */
export type WallBandWords = {
  readonly band: WallBand;
  readonly kind: 'alarms' | 'jobs' | 'in-now';
  /** "18:45", "In now". */
  readonly head: string;
  /** What is to be done at a moment, "Put in", or before one that it has to be done by, "Put in by". */
  readonly before: string;
  /** "in 30 min". */
  readonly away: string;
  /** "32 jobs". */
  readonly count: string;
  readonly urgency: Urgency;
  readonly tiles: readonly WallTile[];
};

type WallVoice = {
  readonly names: Pick<ClubNames, 'racer'>;
  readonly zone: ClockZone;
  readonly now: Instant;
};

/**
 * Everything the wall shows, most urgent first: who must not race, the next work, what comes later where there is room,
 * and what is in each engine. In the last quarter of an hour the hands need the jobs alone.
 */
export function wallBands(briefing: Briefing, voice: WallVoice): readonly WallBandWords[] {
  const dues = dueTogether(briefing.acts);
  const [first] = dues;
  const soon = dues.filter((due) => isNextWork(dues, due));
  const near = first !== undefined && urgencyOf(first.at, voice.now) !== 'later';
  return [
    ...alarmBand(briefing, voice),
    ...soon.map((due) => jobBand(due, briefing, { ...voice, must: true })),
    ...dues.slice(soon.length).map((due) => jobBand(due, briefing, { ...voice, must: false })),
    ...(near ? [] : [inNowBand(briefing, voice)]),
  ];
}

function alarmBand({ planned }: Briefing, { names }: WallVoice): readonly WallBandWords[] {
  const tiles = planned
    .filter(({ standing }) => isLoud(standing))
    .map(
      ({ racer, standing }): WallTile => ({
        key: racer.id,
        name: names.racer(racer.id),
        kind: 'alarm',
        word: standing.dangers.length > 0 ? 'do not race' : 'not told',
        text: alarmText(standing),
      }),
    );
  if (tiles.length === 0) return [];
  const words = { head: 'Stop', before: '', away: '', count: '', urgency: 'now', tiles } as const;
  return [{ ...words, kind: 'alarms', band: bandOf('alarms', tiles, { share: 0.5, must: true }) }];
}

function jobBand(
  { at, acts }: Due,
  { planned }: Briefing,
  { names, zone, now, must }: WallVoice & { readonly must: boolean },
): WallBandWords {
  const plan = planned.find(({ racer }) => racer.id === acts[0]?.racerId)?.plan;
  const tiles = acts.map(
    ({ racerId, swap }): WallTile => ({
      key: `${racerId} ${swap.beforeRun}`,
      name: names.racer(racerId),
      ...jetsOf(swap.to, swap.from),
    }),
  );
  const act = acts.every(({ swap }) => sameMains(swap.from.mains, swap.to.mains)) ? TURN : PUT_IN;
  return {
    kind: 'jobs',
    head: clockText(at, plan === undefined ? { zone } : planClock(plan, zone)),
    before: [
      act.replace(' ', NO_BREAK_SPACE),
      ...(acts.every(({ beforeFirst }) => beforeFirst) ? ['by'] : []),
    ].join(' '),
    away: countdown(now, at),
    count: counted(tiles.length, 'job'),
    urgency: urgencyOf(at, now),
    tiles,
    band: bandOf(`jobs ${at}`, tiles, { share: 1, must }),
  };
}

function inNowBand({ planned }: Briefing, { names }: WallVoice): WallBandWords {
  const tiles = planned.map(
    ({ racer, standing }): WallTile => ({
      key: racer.id,
      name: names.racer(racer.id),
      ...jetsOf(standing.inNow.setting, null),
    }),
  );
  const words = { head: 'In now', before: '', away: '', count: '', urgency: 'later', tiles } as const;
  return { ...words, kind: 'in-now', band: bandOf('in now', tiles, { share: 1, must: true }) };
}

const bandOf = (
  key: string,
  tiles: readonly WallTile[],
  how: Pick<WallBand, 'share' | 'must'>,
): WallBand => ({ key, tiles: tiles.length, ...how });

/** Each jet by itself; one for all where all are alike and were so before: a racer must see that they are not any more. */
function jetsOf(
  { mains, trim }: Setting,
  from: Setting | null,
): Omit<WallTile & { kind: 'jets' }, 'key' | 'name'> {
  const jets = mains.map((main, i) => ({
    size: String(main),
    changed: from !== null && main !== from.mains[i],
  }));
  const alike = new Set(mains).size === 1 && new Set(from?.mains ?? []).size <= 1;
  const turned = from === null || trim !== from.trim;
  return { kind: 'jets', jets: alike ? jets.slice(0, 1) : jets, trim: turned ? trim : null };
}
