import { sameSetting } from '@/lib/carb/same-setting';
import type { HoursProvenance } from '@/lib/hours/provenance';
import type { SwapAct } from '@/lib/plan/compared';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { oldForecastSentence } from './assumptions';
import { pressureSentence } from './provenance';
import { settingText } from './settings';
import { dateClockText } from './times';

/** What a plan that is asked for again and again was made with this time. */
export type FeedHours =
  | {
      readonly from: 'forecast';
      readonly name: string;
      readonly attribution: string;
      readonly told: HoursProvenance;
    }
  /** No service answered; the last good copy. */
  | {
      readonly from: 'old-forecast';
      readonly name: string;
      readonly attribution: string;
      readonly fetchedAt: Instant | null;
      readonly told: HoursProvenance;
    }
  /** The hours that were shared with the night, and why nothing newer. */
  | {
      readonly from: 'link';
      readonly because: 'file' | 'typed' | 'no-place' | 'no-answer' | 'too-far-ahead';
      /** null: none were shared. */
      readonly told: HoursProvenance | null;
    }
  /** Every run is past: nothing is planned any more. */
  | { readonly from: 'over' };

/** What the plan was made with, in one or two sentences; '' where there is nothing to say. */
export function feedHoursSentence(hours: FeedHours, sharedAt: Instant, zone: ClockZone): string {
  const shared = `the hours shared with the night at ${dateClockText(sharedAt, zone)}`;
  switch (hours.from) {
    case 'forecast':
      return sentences(`Forecast: ${creditText(hours)}.`, pressureSentence(hours.told));
    case 'old-forecast':
      return sentences(
        oldForecastSentence(hours.fetchedAt, zone),
        `Forecast: ${creditText(hours)}.`,
        pressureSentence(hours.told),
      );
    case 'over':
      return '';
    case 'link':
      return sentences(
        BECAUSE[hours.because],
        `This goes by ${shared}.`,
        hours.told === null ? '' : pressureSentence(hours.told),
      );
  }
}

const sentences = (...all: readonly string[]): string => all.filter((each) => each !== '').join(' ');

function creditText({ name, attribution }: { readonly name: string; readonly attribution: string }): string {
  return attribution === '' ? name : `${name} (${attribution})`;
}

const BECAUSE: Readonly<Record<Extract<FeedHours, { from: 'link' }>['because'], string>> = {
  file: 'A downloaded calendar does not follow the forecast; one that is subscribed to does.',
  typed: 'The hours were typed, and no forecast is put in their place.',
  'no-place': 'The night names no place to get a forecast for.',
  'no-answer': 'No weather service answers now. Take a reading at the track.',
  'too-far-ahead': 'No forecast covers these runs yet.',
};

/** Said where there is no hour at all to plan with. */
export function acceptedOnlySentence(sharedAt: Instant, zone: ClockZone): string {
  return `No weather service answers now and no hours were shared, so this is the accepted plan as it stood at ${dateClockText(sharedAt, zone)}. Take a reading at the track.`;
}

/** A calendar hears nothing back, so it says what it takes to be in the engine now. */
export function takenToBeFittedSentence(setting: string): string {
  return `Taken to be in the engine by the accepted plan: ${setting}. If it is not, share the night again.`;
}

/** The same of an act that is settled. */
export function countedOnSentence(setting: string, run: string): string {
  return `Counted on from ${run}: ${setting}. If something else is in the engine, share the night again: a calendar hears nothing back.`;
}

/** What to do where a swap that is counted on was not made: a calendar cannot know. '' where nothing was to go in. */
export function notInSentence({ from, to }: Pick<SwapAct, 'from' | 'to'>, run: string): string {
  if (sameSetting(from, to)) return '';
  const [old, fresh] = [settingText(from), settingText(to)];
  return `Is ${fresh} not in? Then do not start ${run} on ${old} because this calendar counts on it: look at the plan again first.`;
}

/** Under an act that differs from the accepted plan. */
export function shareAgainSentence(accepted: string, run: string): string {
  return `When you go by this, share the night again: until then this calendar counts on ${accepted} in ${run}, as accepted.`;
}
