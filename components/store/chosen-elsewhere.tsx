'use client';

import { useEffect, useRef, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { ButtonRow } from '@/components/ui/stack';
import { rosterNames } from '@/lib/store/roster-names';
import { chosenElsewhereSentence, ELSEWHERE } from '@/lib/words/elsewhere';
import { useOpenedStore } from './store-provider';
import { type Chosen, isChosenHere, usePreferences } from './use-preferences';
import { useTable } from './use-table';

type ChosenElsewhereProps = {
  /** Whether the page shows one machine, so that another one is another plan. */
  readonly withMachine: boolean;
};

/** Said where another tab chose a night or a machine: the plan on this page is another one from then on. */
export function ChosenElsewhere({ withMachine }: ChosenElsewhereProps) {
  const opened = useOpenedStore();
  const { preferences, known, changePreferences } = usePreferences();
  const events = useTable('events');
  const machines = useTable('machines');
  const seen = useRef<Chosen | null>(null);
  const [before, setBefore] = useState<Chosen | null>(null);
  const { eventId, machineId } = preferences;
  useEffect(() => {
    if (!known || opened === null) return;
    const last = seen.current;
    seen.current = { eventId, machineId };
    if (last === null) return;
    const byOthers = (key: keyof Chosen, value: string | null) =>
      last[key] !== value && !isChosenHere(opened, key, value);
    if (byOthers('eventId', eventId) || (withMachine && byOthers('machineId', machineId))) setBefore(last);
    else if (last.eventId !== eventId || last.machineId !== machineId) setBefore(null);
  }, [known, opened, eventId, machineId, withMachine]);
  if (before === null) return null;
  const event = events?.find(({ id }) => id === eventId)?.value ?? null;
  const names = event === null || machines === null ? null : rosterNames(event, machines);
  const sentence = chosenElsewhereSentence({
    event: event?.event.name ?? null,
    machine: withMachine && machineId !== null ? (names?.get(machineId) ?? null) : null,
  });
  return (
    <Notice
      tone="caution"
      title={sentence}
      act={
        <ButtonRow>
          <Button onClick={() => void changePreferences(before)}>{ELSEWHERE.back}</Button>
          <Button kind="quiet" onClick={() => setBefore(null)}>
            {ELSEWHERE.fine}
          </Button>
        </ButtonRow>
      }
    />
  );
}
