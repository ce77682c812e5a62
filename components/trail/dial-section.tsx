'use client';

import { useMemo } from 'react';
import { Section } from '@/components/ui/section';
import { type Column, Table } from '@/components/ui/table';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import { RANGE } from '@/lib/air/ranges';
import { standardPressure } from '@/lib/air/standard-atmosphere';
import { ASSUMED_RELATIVE_HUMIDITY } from '@/lib/contract/air-from-json';
import { type DialPoint, dialAt, type ScrewDial, screwDial } from '@/lib/trail/dial';
import { temperatureFrom, temperatureIn, type UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { formatElevation, formatTemperature } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { screwWaySentence, takeoverSentence, turnsText } from '@/lib/words/screw';
import { DialPicture } from './dial-picture';
import { readSeasons } from './read-seasons';
import type { TrailSectionProps } from './section-props';
import styles from './trail.module.css';

const SPAN = { coldest: celsiusToKelvin(-45), warmest: celsiusToKelvin(20) };

/** Turns of the screw against temperature at the place. */
export function DialSection({ draft, machine }: TrailSectionProps) {
  const { units, elevation: typed } = draft.value;
  const elevation = useMemo(
    () => readSeasons({ units, elevation: typed, conditions: [] }).elevation,
    [units, typed],
  );
  const usable =
    elevation !== null && elevation >= RANGE.elevation.lowest && elevation <= RANGE.elevation.highest;
  const dial = useMemo(() => {
    const { pilot } = machine;
    if (pilot === null || elevation === null || !usable) return null;
    const place = {
      pressure: standardPressure(elevation),
      pressureFrom: 'standard',
      relativeHumidity: ratio(ASSUMED_RELATIVE_HUMIDITY),
    } as const;
    return screwDial({ ...machine, pilot }, place, SPAN);
  }, [machine, elevation, usable]);
  if (machine.pilot === null) return null;
  return (
    <Section title="The screw over temperature" id="screw">
      {dial === null || elevation === null ? (
        <p>Type the elevation of the place above, and the turns stand here.</p>
      ) : (
        <>
          <p>
            At {formatElevation(elevation, units)}. {screwWaySentence(dial.pilot)}{' '}
            {takeoverSentence(dial, units)}
          </p>
          <div className={styles.dial}>
            <DialPicture dial={dial} units={units} />
            <DialTable dial={dial} units={units} />
          </div>
        </>
      )}
    </Section>
  );
}

type DialTableProps = { readonly dial: ScrewDial; readonly units: UnitChoice };

type Line = { readonly point: DialPoint; readonly jet: number; readonly held: boolean };

function DialTable({ dial, units }: DialTableProps) {
  const columns: readonly Column<Line>[] = [
    { head: 'Temperature', names: true, cell: ({ point }) => formatTemperature(point.temperature, units, 0) },
    { head: 'Pilot', figures: true, cell: ({ jet }) => jet },
    { head: 'Turns out', figures: true, cell: ({ point }) => turnsText(point.turns, dial.pilot) },
    { head: <VisuallyHidden>Note</VisuallyHidden>, cell: ({ held }) => (held ? 'screw at its end' : '') },
  ];
  return (
    <Table
      caption="Rounded to the richer eighth of a turn."
      columns={columns}
      rows={linesOf(dial, units)}
      rowKey={({ point }) => String(point.temperature)}
    />
  );
}

/** Every ten degrees of the person's scale, warmest first. */
function linesOf(dial: ScrewDial, units: UnitChoice): readonly Line[] {
  const [coldest, warmest] = [SPAN.coldest, SPAN.warmest].map((t) => temperatureIn(t, units.temperature));
  const [first, last] = [Math.ceil((coldest ?? 0) / 10), Math.floor((warmest ?? 0) / 10)];
  return Array.from({ length: last - first + 1 }, (_, i) => (last - i) * 10).flatMap((degrees) => {
    const read = dialAt(dial, temperatureFrom(degrees, units.temperature));
    return read === null ? [] : [{ point: read.point, jet: read.jet, held: read.reach === 'held' }];
  });
}
