import type { AirDraft } from '@/components/air/air-draft';
import type { IntakeChoice } from '@/lib/carb/intake-choices';
import type { LimitChoice } from '@/lib/carb/limits';
import type { MachineJson } from '@/lib/contract/machine';
import type { UnitChoice } from '@/lib/units/choice';

/** Text fields keep what was typed, also where it is no number yet. Names follow the JSON where they can. */
export type MachineDraft = {
  /** What bare numbers in this draft mean. */
  readonly units: UnitChoice;
  readonly name: string;
  /** How many, '1' to '6'. */
  readonly carburettors: string;
  readonly staggered: boolean;
  readonly main: string;
  /** One for each of six carburettors; those beyond the count keep their text. */
  readonly mains: readonly string[];
  readonly marking: 'flow' | 'bore' | 'list';
  /** The marking that was questioned and found right; '' where none was. */
  readonly markingSure: '' | 'flow' | 'bore';
  readonly list: string;
  readonly box: BoxDraft;
  readonly baseline: BaselineDraft;
  readonly intake: { readonly choice: IntakeChoice | 'own'; readonly offset: string };
  readonly trim: TrimDraft;
  readonly pilot: PilotDraft;
  readonly needle: NeedleDraft;
  readonly limits: LimitsDraft;
  readonly response: ResponseDraft;
  readonly fuelDensity: { readonly on: boolean; readonly offset: string; readonly baseline: string };
  readonly richPowerLoss: string;
  /** Empty: the usual worth. */
  readonly swapWorthPercent: string;
  readonly ratedPowerHp: string;
};

export type BoxDraft = {
  readonly how: 'typed' | 'range';
  readonly text: string;
  readonly from: string;
  readonly to: string;
  readonly by: string;
  readonly each: string;
};

export type BaselineDraft = AirDraft & {
  readonly judged: MachineJson['baseline']['judged'];
  readonly provenOn: string;
  readonly note: string;
  /** The intake was the same as now when the jets were proven. */
  readonly sameIntake: boolean;
  readonly intakeOffset: string;
};

export type TrimDraft = {
  readonly on: boolean;
  readonly lowest: string;
  readonly highest: string;
  readonly baseline: string;
  readonly percentPerPosition: string;
};

export type PilotDraft = {
  readonly on: boolean;
  readonly jet: string;
  readonly jets: string;
  readonly screw: 'fuel' | 'air';
  readonly turns: string;
  readonly leastTurns: string;
  readonly mostTurns: string;
  readonly turnsPerSize: string;
  readonly percentPerSize: string;
};

export type NeedleDraft = {
  readonly on: boolean;
  readonly groove: string;
  readonly grooves: string;
  readonly percentPerGroove: string;
};

export type LimitsDraft = {
  readonly choice: LimitChoice | 'own';
  readonly leanPercent: string;
  readonly richPercent: string;
  readonly risk: string;
};

export type ResponseOriginJson = NonNullable<MachineJson['response']>['origin'];

export type ResponseDraft = {
  /** false: the default prior, whatever it may become. */
  readonly own: boolean;
  readonly origin: ResponseOriginJson;
  readonly pressureExponent: string;
  readonly temperatureExponent: string;
  readonly pressureSd: string;
  readonly temperatureSd: string;
  readonly correlation: string;
};

export const MOST_CARBURETTORS = 6;

/** Six texts, the given ones first. */
export function sixMains(mains: readonly string[]): readonly string[] {
  return Array.from({ length: MOST_CARBURETTORS }, (_, i) => mains[i] ?? '');
}
