'use client';

import { type FoundPlace, type PlacesState, usePlaces } from '@/components/place/use-places';
import { Combobox } from '@/components/ui/combobox';
import { askProblemWords } from '@/lib/words/ask-problem';
import styles from './weather.module.css';

type PlaceSearchProps = {
  readonly label: string;
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly onFound: (place: FoundPlace) => void;
};

const INSTEAD = 'Type the coordinates instead: a map shows them for any point.';

/** A place by its name, or part of it. */
export function PlaceSearch({ label, text, onText, onFound }: PlaceSearchProps) {
  const state = usePlaces(text);
  const options = labelledPlaces(state);
  const words = stateWords(state, text);
  return (
    <div className={styles.part}>
      <Combobox
        name="search"
        label={label}
        hint="Two letters or more; arrow keys and Enter choose."
        value={text}
        options={[...options.keys()]}
        onChange={(typed) => {
          onText(typed);
          const place = options.get(typed);
          if (place !== undefined) onFound(place);
        }}
      />
      <output className={styles.status}>{words}</output>
      {state.status === 'found' ? <Credit {...state.answer} /> : null}
    </div>
  );
}

/** The same name twice in a region is told apart by where it lies. */
function labelledPlaces(state: PlacesState): ReadonlyMap<string, FoundPlace> {
  const labelled = new Map<string, FoundPlace>();
  for (const place of state.status === 'found' ? state.answer.places : []) {
    const label = [place.name, place.region].filter((part) => part !== '').join(', ');
    const point = `${place.latitude.toFixed(2)}, ${place.longitude.toFixed(2)}`;
    labelled.set(labelled.has(label) ? `${label} (${point})` : label, place);
  }
  return labelled;
}

function stateWords(state: PlacesState, text: string): string {
  switch (state.status) {
    case 'nothing-asked':
      return '';
    case 'asking':
      return 'Searching…';
    case 'failed':
      return askProblemWords(state.problem, INSTEAD);
    case 'found': {
      const count = state.answer.places.length;
      if (count === 0)
        return `No place called “${text.trim()}” is known. Try the nearest town, or type the coordinates.`;
      return count === 1 ? 'One place found.' : `${count} places found.`;
    }
  }
}

function Credit({
  attribution,
  attributionUrl,
}: {
  readonly attribution: string;
  readonly attributionUrl: string;
}) {
  return (
    <p className={styles.credit}>
      <a href={attributionUrl} rel="noreferrer">
        {attribution}
      </a>
    </p>
  );
}
