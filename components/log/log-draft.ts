import { type AirDraft, airDraft, BLANK_AIR } from '@/components/air/air-draft';
import { onlyUnits } from '@/components/draft/only-units';
import type { JudgedBy } from '@/lib/carb/jet-evidence';
import type { CylinderVerdicts, Verdict } from '@/lib/carb/verdicts';
import type { LogRecord } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { numberText } from '@/lib/units/entry-text';
import { speedIn, speedUnit } from '@/lib/words/log';
import { jetsText } from '@/lib/words/settings';

export type CylinderVerdict = Verdict | 'none';

export type LogDraft = {
  readonly units: UnitChoice;
  readonly machineId: string;
  readonly run: string;
  readonly date: string;
  readonly clock: string;
  readonly mains: string;
  readonly trim: string;
  /** `each`: cylinder by cylinder, in `verdicts`. */
  readonly verdict: Verdict | 'none' | 'each';
  readonly verdicts: readonly CylinderVerdict[];
  readonly sizes: string;
  readonly judgedBy: JudgedBy | 'none';
  readonly seconds: string;
  readonly speed: string;
  readonly note: string;
  readonly air: AirDraft;
};

type Start = {
  readonly units: UnitChoice;
  readonly machineId: string;
  readonly date: string;
  readonly mains: string;
};

export function blankLogDraft({ units, machineId, date, mains }: Start): LogDraft {
  return {
    units: onlyUnits(units),
    machineId,
    run: '',
    date,
    clock: '',
    mains,
    trim: '',
    verdict: 'none',
    verdicts: [],
    sizes: '',
    judgedBy: 'none',
    seconds: '',
    speed: '',
    note: '',
    air: BLANK_AIR,
  };
}

/** The shape of a kept draft. */
export const LOG_SHAPE: LogDraft = {
  ...blankLogDraft({
    units: { temperature: 'C', pressure: 'hPa', elevation: 'm' },
    machineId: '',
    date: '',
    mains: '',
  }),
  verdicts: ['none'],
};

const optional = (value: number | null): string => (value === null ? '' : numberText(value));

/** The draft that reads back as `entry`. */
export function logDraft(entry: LogRecord, units: UnitChoice): LogDraft {
  const { at, setting, verdict, verdicts, judgedBy, speedKmh } = entry;
  return {
    units: onlyUnits(units),
    machineId: entry.machineId,
    run: entry.run,
    date: at.slice(0, 10),
    clock: at.slice(11, 16),
    mains: jetsText(setting.mains),
    trim: optional(setting.trim),
    verdict: verdicts === undefined ? (verdict ?? 'none') : 'each',
    verdicts: (verdicts ?? []).map((each) => each ?? 'none'),
    sizes: verdict === 'right' ? '' : optional(entry.sizes),
    judgedBy: judgedBy ?? 'none',
    seconds: optional(entry.seconds),
    speed: speedKmh === null ? '' : numberText(speedIn(speedKmh, speedUnit(units)), 4),
    note: entry.note,
    air: airDraft(entry.air, units),
  };
}

/** What the draft says of each of so many cylinders; null where nobody looked. */
export function cylindersOf(
  { verdict, verdicts }: Pick<LogDraft, 'verdict' | 'verdicts'>,
  cylinders: number,
): CylinderVerdicts {
  return Array.from({ length: cylinders }, (_, i) => {
    const each = verdict === 'each' ? (verdicts[i] ?? 'none') : verdict;
    return each === 'none' ? null : each;
  });
}
