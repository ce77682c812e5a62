import type { DraftState } from '@/components/draft/use-draft';
import type { Machine } from '@/lib/carb/machine';
import type { TrailDraft } from './trail-draft';

/** What every part of the page works on: what was typed, and the machine it is about. */
export type TrailSectionProps = {
  readonly draft: DraftState<TrailDraft>;
  readonly machine: Machine;
  /** The machine is an example as well, so that nobody takes the rest for his own. */
  readonly invented: boolean;
};
