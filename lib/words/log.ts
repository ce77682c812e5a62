import type { JudgedBy } from '@/lib/carb/jet-evidence';
import type { Setting } from '@/lib/carb/machine';
import type { CylinderVerdicts, Verdict } from '@/lib/carb/verdicts';
import type { PastRunChoices } from '@/lib/standing/past-run';
import type { LogRecord } from '@/lib/store/records';
import { clockFace, type HourStyle } from '@/lib/time/zone';
import type { ElevationUnit } from '@/lib/units/choice';
import { MILE_M } from '@/lib/units/convert';
import { formatNumber, NO_BREAK_SPACE } from '@/lib/units/format';
import { dateText } from './day-text';
import { STATE_WORD } from './grades';
import { listing } from './listing';
import { settingText } from './settings';

type Judgement = {
  readonly verdict: Verdict | null;
  /** By carburettor, where they differ. */
  readonly verdicts?: CylinderVerdicts | undefined;
  readonly sizes: number | null;
};

/** "good", "1.5 sizes rich", "lean in cylinder 2, good in cylinder 1 and 3"; "not judged" where nobody did. */
export function verdictText({ verdict, verdicts, sizes }: Judgement): string {
  if (verdict === null) return 'not judged';
  const said = (each: Verdict) => (each === verdict ? offText(each, sizes) : STATE_WORD[each]);
  if (verdicts === undefined) return said(verdict);
  const places = (wanted: Verdict | null) =>
    verdicts.flatMap((each, i) => (each === wanted ? [String(i + 1)] : []));
  const found = (['lean', 'right', 'rich'] as const)
    .filter((each) => verdicts.includes(each))
    .map((each) => `${said(each)} in cylinder ${listing(places(each))}`);
  const unseen = places(null);
  return [...found, ...(unseen.length > 0 ? [`cylinder ${listing(unseen)} not looked at`] : [])].join(', ');
}

function offText(verdict: Verdict, sizes: number | null): string {
  return verdict === 'right' || sizes === null
    ? STATE_WORD[verdict]
    : `${sizes} size${sizes === 1 ? '' : 's'} ${verdict}`;
}

/** A run of the log: "Round 3, 16 Jan 2027, 20:30", by the clock of the track. */
export function loggedRunText({ run, at }: LogRecord, hours: HourStyle): string {
  const when = `${dateText(at)}, ${clockFace(at.slice(11, 16), hours)}`;
  return run === '' ? when : `${run}, ${when}`;
}

/** A past run of which nobody said what it was made on: asked before anything else is asked about it. */
export type PastRunWords = {
  /** "Round 3: what was in?" */
  readonly ask: string;
  readonly answers: readonly { readonly setting: Setting; readonly label: string }[];
  readonly other: string;
};

export function pastRunWords(run: string, { said, accepted }: PastRunChoices): PastRunWords {
  const planned =
    accepted === null ? [] : [{ setting: accepted, label: `${settingText(accepted)}, as planned` }];
  return {
    ask: `${run}: what was in?`,
    answers: [{ setting: said, label: settingText(said) }, ...planned],
    other: 'Something else',
  };
}

const JUDGES: Readonly<Record<JudgedBy, string>> = {
  plugs: 'plugs',
  'exhaust-temperature': 'exhaust temperature',
  wideband: 'wideband',
  'piston-wash': 'piston wash',
  clock: 'the clock',
  feel: 'feel',
};

export function judgedByText(judge: JudgedBy): string {
  return JUDGES[judge];
}

export type SpeedUnit = 'mph' | 'km/h';

/** Who reads heights in feet reads speeds in miles. */
export function speedUnit({ elevation }: { readonly elevation: ElevationUnit }): SpeedUnit {
  return elevation === 'ft' ? 'mph' : 'km/h';
}

const KMH_PER_MPH = MILE_M / 1000;

export function speedIn(kmh: number, unit: SpeedUnit): number {
  return unit === 'mph' ? kmh / KMH_PER_MPH : kmh;
}

export function speedFrom(value: number, unit: SpeedUnit): number {
  return unit === 'mph' ? value * KMH_PER_MPH : value;
}

export function speedText(kmh: number, unit: SpeedUnit): string {
  return `${formatNumber(speedIn(kmh, unit), 1)}${NO_BREAK_SPACE}${unit}`;
}

export function secondsText(seconds: number): string {
  return `${formatNumber(seconds, 3).replace(/\.?0+$/, '')}${NO_BREAK_SPACE}s`;
}
