'use client';

import { startTransition, useOptimistic } from 'react';
import { usePreferences } from '@/components/store/use-preferences';
import { Choice } from '@/components/ui/choice';
import { Dialog } from '@/components/ui/dialog';
import { Slider } from '@/components/ui/slider';
import type { Preferences } from '@/lib/store/records';
import { PRESSURE_UNITS } from '@/lib/units/choice';

type DisplayDialogProps = { readonly open: boolean; readonly onClose: () => void };

const THEMES = [
  { value: 'auto', label: 'As the device' },
  { value: 'day', label: 'Day' },
  { value: 'night', label: 'Night' },
] as const;
const CLOCKS = [
  { value: 'auto', label: 'As the device' },
  { value: '12', label: '7:45 pm' },
  { value: '24', label: '19:45' },
] as const;
const TEMPERATURES = [
  { value: 'F', label: '°F' },
  { value: 'C', label: '°C' },
] as const;
const PRESSURES = PRESSURE_UNITS.map((unit) => ({ value: unit, label: unit }));
const ELEVATIONS = [
  { value: 'ft', label: 'feet' },
  { value: 'm', label: 'metres' },
] as const;

/** How things are shown: paper or night, how bright, which units. */
export function DisplayDialog({ open, onClose }: DisplayDialogProps) {
  const { preferences, changePreferences } = usePreferences();
  // A choice shows at once; the store follows a moment later and has the last word.
  const [shown, showAtOnce] = useOptimistic(preferences, (before, part: Partial<Preferences>) => ({
    ...before,
    ...part,
  }));
  const change = (part: Partial<Preferences>) =>
    startTransition(async () => {
      showAtOnce(part);
      await changePreferences(part);
    });
  return (
    <Dialog title="Display" open={open} onClose={onClose}>
      <Choice
        label="Day or night"
        hint="Day is the one to read in sunlight."
        value={shown.theme}
        options={THEMES}
        onChange={(theme) => change({ theme })}
      />
      {shown.theme === 'day' ? null : (
        <Slider
          label="Brightness by night"
          value={shown.brightness}
          least={0.4}
          most={1}
          step={0.05}
          text={`${Math.round(shown.brightness * 100)} %`}
          onChange={(brightness) => change({ brightness })}
        />
      )}
      <Choice
        label="Clock"
        value={shown.clock ?? 'auto'}
        options={CLOCKS}
        onChange={(clock) => change({ clock })}
      />
      <Choice
        label="Temperature"
        value={shown.temperature}
        options={TEMPERATURES}
        onChange={(temperature) => change({ temperature })}
      />
      <Choice
        label="Pressure"
        value={shown.pressure}
        options={PRESSURES}
        onChange={(pressure) => change({ pressure })}
      />
      <Choice
        label="Elevation"
        value={shown.elevation}
        options={ELEVATIONS}
        onChange={(elevation) => change({ elevation })}
      />
    </Dialog>
  );
}
