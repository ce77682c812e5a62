'use client';

import { useEffect, useMemo, useState } from 'react';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Choice } from '@/components/ui/choice';
import { Section } from '@/components/ui/section';
import { Select } from '@/components/ui/select';
import { useNear } from '@/components/ui/use-near';
import { useWidth } from '@/components/ui/use-width';
import { useWorkerReady } from '@/components/ui/use-worker-ready';
import { laneOf } from '@/lib/carb/lane';
import type { Machine } from '@/lib/carb/machine';
import type { Night } from '@/lib/night/night';
import { pictureOf } from '@/lib/plan/night-picture';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { carburettorOptions } from '@/lib/words/carburettor-options';
import type { Voice } from '@/lib/words/voice';
import { chartHeight, PAPER_WIDTH, TEMPERATURE_HEIGHT } from './frame-of-picture';
import styles from './picture-section.module.css';
// With the page's own styles: one request less when the chart arrives.
import './night-chart.module.css';
import './hour-walk.module.css';

const Drawing = () => <p className={styles.loading}>Drawing the night…</p>;

type Drawn = typeof import('./figures').Figures;

/**
 * The chart library is a third of the page: it is asked for when the picture comes near the screen, or once that costs
 * nothing. A print waits for nothing, so it has to be there by then.
 */
function useFigures(near: boolean): Drawn | null {
  const [Figures, setFigures] = useState<Drawn | null>(null);
  const ready = useWorkerReady();
  const wanted = near || ready;
  useEffect(() => {
    if (!wanted) return;
    import('./figures').then(
      (module) => setFigures(() => module.Figures),
      (fault: unknown) =>
        setFigures(() => {
          // For the boundary around the picture.
          throw fault;
        }),
    );
  }, [wanted]);
  return near ? Figures : null;
}

const SPANS = [
  { value: 'runs', label: 'The runs' },
  { value: 'hours', label: 'All hours' },
] as const;

type PictureSectionProps = {
  readonly night: Night;
  readonly plan: Plan;
  readonly voice: Voice;
  readonly now: Instant;
  readonly carburettor: number;
  readonly onCarburettor: (carburettor: number) => void;
};

/** The picture that proves the call. */
export function PictureSection(props: PictureSectionProps) {
  const { night, plan, voice, now, carburettor, onCarburettor } = props;
  const { machine, zone, records } = night;
  const clock = useClockZone(zone);
  const place = records.event.value.event.place ?? null;
  const [span, setSpan] = useState<'runs' | 'hours'>('runs');
  const [jet, setJet] = useState('');
  const [cursor, setCursor] = useState<Instant | null>(null);
  const { ref, width } = useWidth<HTMLDivElement>(PAPER_WIDTH);
  const Figures = useFigures(useNear(ref));
  const picture = useMemo(
    () => pictureOf({ plan, machine, carburettor, zone, place, span }),
    [plan, machine, carburettor, zone, place, span],
  );
  const extra = useMemo(
    () => (jet === '' ? null : laneOf(machine, Number(jet), machine.trim?.baseline ?? null)),
    [machine, jet],
  );
  if (picture === null) return null;
  return (
    <Section title="The night in one picture">
      <div
        ref={ref}
        className={styles.figures}
        style={width === 0 ? undefined : { minHeight: chartHeight(width, plan) + TEMPERATURE_HEIGHT }}
      >
        {width > 0 && Figures !== null ? (
          <Figures {...{ picture, plan, voice, width, now, extra, cursor }} zone={clock} onWalk={setCursor} />
        ) : (
          <Drawing />
        )}
      </div>
      <div className={styles.choices}>
        <CarburettorChoice {...{ machine, carburettor, onCarburettor }} />
        <Choice label="Hours shown" value={span} options={SPANS} onChange={setSpan} />
        <Select
          label="Where another jet is good"
          value={jet}
          options={jetOptions(machine)}
          onChange={setJet}
        />
      </div>
    </Section>
  );
}

type CarburettorChoiceProps = {
  readonly machine: Machine;
  readonly carburettor: number;
  readonly onCarburettor: (carburettor: number) => void;
};

/** Only where carburettors are jetted differently. */
function CarburettorChoice({ machine, carburettor, onCarburettor }: CarburettorChoiceProps) {
  const options = carburettorOptions(machine);
  if (options.length < 2) return null;
  return (
    <Choice
      label="Carburettor shown"
      value={String(carburettor)}
      options={options}
      onChange={(value) => onCarburettor(Number(value))}
    />
  );
}

function jetOptions({ box }: Machine) {
  return [
    { value: '', label: 'none' },
    ...box.map(({ size }) => ({ value: String(size), label: String(size) })),
  ];
}
