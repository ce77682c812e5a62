'use client';

import { AirReadout } from '@/components/air/air-readout';
import { fieldsOf } from '@/components/draft/fields-of';
import { Section } from '@/components/ui/section';
import { Columns } from '@/components/ui/stack';
import type { AirJson } from '@/lib/contract/air-from-json';
import { pressureJson, pressureSaid } from '@/lib/contract/pressure';
import { HOURS } from '@/lib/fields/hours/hours-rows';
import type { HoursReading } from '@/lib/fields/hours/read-hours';
import { HoursPressureQuestion } from './hours-pressure-question';
import type { HoursSectionProps } from './section-props';

/** Asked once for the night: elevation, pressure and humidity; by the hour only where somebody wants that. */
export function HourAirFields({ draft, form, reading }: HoursSectionProps) {
  const { field } = fieldsOf(HOURS, { draft, form });
  return (
    <Section title="The rest of the air, once for the night">
      <Columns>
        {field('elevation')}
        {field('humidity')}
      </Columns>
      {field('pressureKind')}
      {field('pressure')}
      <HoursPressureQuestion draft={draft} reading={reading} />
      <AirReadout air={firstAir(reading)} units={draft.value.units} />
      {field('humidityByHour')}
      {field('pressureByHour')}
    </Section>
  );
}

/** The air of the first typed hour, to check the pressure by eye; null until everything can be read. */
function firstAir(reading: HoursReading | null): AirJson | null {
  const hour = reading?.typed.hours[0];
  if (reading === null || hour === undefined) return null;
  const { pressure, relativeHumidity } = reading.typed;
  const once = pressureSaid(hour) === null && pressure.kind !== 'standard' ? pressureJson(pressure) : {};
  return { relativeHumidity, ...hour, ...once, elevationM: reading.elevationM };
}
