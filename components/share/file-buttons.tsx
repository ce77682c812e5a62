'use client';

import { Button } from '@/components/ui/button';
import { saveFile } from '@/components/ui/save-file';
import { ButtonRow } from '@/components/ui/stack';
import { useToast } from '@/components/ui/toast';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { Plan } from '@/lib/plan/types';
import { sharedLabels } from '@/lib/share/shared-labels';
import type { SharedNight } from '@/lib/share/shared-night';
import type { UnitChoice } from '@/lib/units/choice';

type FilesProps = { readonly night: SharedNight; readonly plan: Plan; readonly units: UnitChoice };

/** The night as files; what writes them is loaded when it is asked for. */
export function FileButtons({ night, plan, units }: FilesProps) {
  const say = useToast();
  const save = (write: () => Promise<void>) =>
    void write().catch(() => say({ text: 'The file could not be written. Reload the page and try again.' }));
  const voice = { zone: night.event.timezone, units, ride: night.event.ride };
  return (
    <ButtonRow>
      <Button
        onClick={() =>
          save(async () => {
            const { downloadedCalendar } = await import('@/lib/share/downloaded-calendar');
            saveFile({ text: downloadedCalendar(night, voice), type: 'text/calendar', name: 'night.ics' });
          })
        }
      >
        Calendar (.ics)
      </Button>
      <Button
        onClick={() =>
          save(async () => {
            const { planCsv } = await import('@/lib/share/plan-csv');
            const name = night.machines[0]?.machine.name ?? '';
            // The mark at the front makes desktop spreadsheets read it as UTF-8.
            const text = `\ufeff${planCsv([{ name, label: sharedLabels(night.machines)[0], plan }], { ...voice, now: instantFromJson(night.sharedAt) })}`;
            saveFile({ text, type: 'text/csv', name: 'night.csv' });
          })
        }
      >
        Table (.csv)
      </Button>
      <Button
        onClick={() =>
          save(async () => {
            const { nightFile } = await import('@/lib/share/night-file');
            saveFile({ text: nightFile(night), type: 'application/json', name: 'night.json' });
          })
        }
      >
        Night (.json)
      </Button>
    </ButtonRow>
  );
}
