'use client';

import { AirReadout } from '@/components/air/air-readout';
import { PressureFields } from '@/components/air/pressure-fields';
import { wholeOf } from '@/components/draft/part';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Columns } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import type { AirJson } from '@/lib/contract/air-from-json';
import { pressureJson, pressureSaid } from '@/lib/contract/pressure';
import { HoursPressureQuestion } from './hours-pressure-question';
import type { HoursReading } from './read-hours';
import type { HoursSectionProps } from './section-props';

/** Asked once for the night: elevation, pressure and humidity; by the hour only where somebody wants that. */
export function HourAirFields({ draft, form, reading }: HoursSectionProps) {
  const whole = wholeOf(draft);
  const { elevation, pressureKind, pressure, humidity, humidityByHour, pressureByHour, units } = draft.value;
  return (
    <Section title="The rest of the air, once for the night">
      <Columns>
        <NumberField
          {...form.field('elevation')}
          hint="Kept with the event."
          unit={units.elevation}
          value={elevation}
          onChange={(text) => whole.set('elevation', text)}
        />
        <NumberField
          {...form.field('humidity')}
          hint="In the cold it hardly counts."
          unit="%"
          value={humidity}
          onChange={(text) => whole.set('humidity', text)}
        />
      </Columns>
      <PressureFields
        kind={pressureKind}
        pressure={pressure}
        units={units}
        onKind={(kind) => whole.set('pressureKind', kind)}
        onPressure={(text) => whole.set('pressure', text)}
        kindField={form.field('pressureKind')}
        pressureField={form.field('pressure')}
      />
      <HoursPressureQuestion draft={draft} reading={reading} />
      <AirReadout air={firstAir(reading)} units={units} />
      <Switch
        label="Humidity by the hour"
        hint="Hours left empty follow those around them."
        checked={humidityByHour}
        onChange={(on) => whole.set('humidityByHour', on)}
      />
      {pressureKind === 'standard' ? null : (
        <Switch
          label="Pressure by the hour"
          hint="Hours left empty follow those around them."
          checked={pressureByHour}
          onChange={(on) => whole.set('pressureByHour', on)}
        />
      )}
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
