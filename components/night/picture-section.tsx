'use client';

import dynamic from 'next/dynamic';
import { useMemo, useState } from 'react';
import { Choice } from '@/components/ui/choice';
import { Section } from '@/components/ui/section';
import { Columns } from '@/components/ui/stack';
import { useWidth } from '@/components/ui/use-width';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { crossingsSentence } from '@/lib/words/drift';
import type { Voice } from '@/lib/words/voice';
import { carburettorOptions } from './carburettor-options';
import { DriftStrip } from './drift-strip';
import { HourWalk } from './hour-walk';
import type { Night } from './night';
import { pictureOf } from './picture';
import styles from './picture-section.module.css';

const NightChart = dynamic(() => import('./night-chart').then((module) => module.NightChart), {
  ssr: false,
  loading: () => <p className={styles.loading}>Drawing the night...</p>,
});

const SPANS = [
  { value: 'runs', label: 'The runs' },
  { value: 'hours', label: 'All hours' },
] as const;

type PictureSectionProps = {
  readonly night: Night;
  readonly plan: Plan;
  readonly voice: Voice;
  readonly now: Instant;
};

/** The picture that proves the call: chart, strip, and the crossings in words. */
export function PictureSection({ night, plan, voice, now }: PictureSectionProps) {
  const { machine, zone, records } = night;
  const place = records.event.value.event.place ?? null;
  const [carburettor, setCarburettor] = useState(0);
  const [span, setSpan] = useState<'runs' | 'hours'>('runs');
  const [cursor, setCursor] = useState<Instant | null>(null);
  const { ref, width } = useWidth<HTMLDivElement>();
  const options = carburettorOptions(machine);
  const shown = options.some(({ value }) => value === String(carburettor)) ? carburettor : 0;
  const picture = useMemo(
    () => pictureOf({ plan, machine, carburettor: shown, zone, place, span }),
    [plan, machine, shown, zone, place, span],
  );
  if (picture === null) return null;
  return (
    <Section title="The night in one picture">
      <p className={styles.legend}>
        The curve is the main this air asks for, with its likely range; the thick line is the plan. Above a
        band the jet is lean, below it too rich.
      </p>
      <div ref={ref} className={styles.figures}>
        {width === 0 ? null : (
          <>
            <div className={styles.chart} aria-hidden="true">
              <NightChart picture={picture} zone={zone} width={width} now={now} cursor={cursor} />
            </div>
            <DriftStrip picture={picture} machine={machine} width={width} />
            <HourWalk picture={picture} plan={plan} voice={voice} cursor={cursor} onWalk={setCursor} />
          </>
        )}
      </div>
      <p className={styles.crossings}>{crossingsSentence(plan, voice)}</p>
      <Columns>
        {options.length < 2 ? null : (
          <Choice
            label="Carburettor shown"
            value={String(shown)}
            options={options}
            onChange={(value) => setCarburettor(Number(value))}
          />
        )}
        <Choice label="Hours shown" value={span} options={SPANS} onChange={setSpan} />
      </Columns>
    </Section>
  );
}
