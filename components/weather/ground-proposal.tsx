'use client';

import { type PlacesState, useGround } from '@/components/place/use-places';
import { Button } from '@/components/ui/button';
import type { UnitChoice } from '@/lib/units/choice';
import { readElevation } from '@/lib/units/entry';
import { elevationText } from '@/lib/units/entry-text';
import { formatElevation } from '@/lib/units/format';
import { type Metre, metre } from '@/lib/units/quantity';
import { askProblemWords } from '@/lib/words/ask-problem';
import type { Location } from './locate';
import styles from './weather.module.css';

type GroundProposalProps = {
  readonly point: Location | null;
  readonly elevation: string;
  readonly units: UnitChoice;
  readonly onUse: (elevation: string) => void;
};

/** Less is within what the terrain model itself may be off. */
const SAME_M = 10;

/** What a terrain model says about the height of the point, to be taken or left. */
export function GroundProposal({ point, elevation, units, onUse }: GroundProposalProps) {
  const state = useGround(point);
  const ground = groundOf(state);
  const typed = readElevation(elevation, units.elevation);
  const same = ground !== null && typed.ok && Math.abs(typed.value - ground) < SAME_M;
  return (
    <div className={styles.part}>
      <output className={styles.status}>{words(state, ground, { units, same })}</output>
      {ground === null || same ? null : (
        <Button onClick={() => onUse(elevationText(metre(Math.round(ground)), units))}>
          Use {formatElevation(ground, units)}
        </Button>
      )}
    </div>
  );
}

function groundOf(state: PlacesState): Metre | null {
  const found = state.status === 'found' ? (state.answer.places[0]?.elevationM ?? null) : null;
  return found === null ? null : metre(found);
}

type Context = { readonly units: UnitChoice; readonly same: boolean };

function words(state: PlacesState, ground: Metre | null, { units, same }: Context): string {
  if (state.status === 'nothing-asked') return '';
  if (state.status === 'asking') return 'Looking up the ground there…';
  if (state.status === 'failed')
    return askProblemWords(state.problem, 'The elevation above stays; a map or an altimeter tells it.');
  if (ground === null) return 'The height of the ground there is not known: a map or an altimeter tells it.';
  const text = formatElevation(ground, units);
  const square = units.elevation === 'm' ? '90 m' : '300 ft';
  return same
    ? `The ground there is ${text} by the terrain model, as typed.`
    : `The ground there is ${text} by the terrain model, which sees squares of ${square}. What you know of the track is better.`;
}
