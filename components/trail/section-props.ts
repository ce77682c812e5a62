import type { DraftState } from '@/components/draft/use-draft';
import type { Machine } from '@/lib/carb/machine';
import type { TrailDraft } from '@/lib/fields/trail/trail-rows';

/** What every part of the page works on: what was typed, and the machine it is about. */
export type TrailSectionProps = {
  readonly draft: DraftState<TrailDraft>;
  readonly machine: Machine;
  /** The machine is an example as well, so that nobody takes the rest for his own. */
  readonly invented: boolean;
};
