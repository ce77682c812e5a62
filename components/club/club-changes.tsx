import { useMemo } from 'react';
import { Notice } from '@/components/ui/notice';
import type { Briefing } from '@/lib/club/briefing';
import type { PlannedRacer } from '@/lib/club/racer';
import { acceptedAs, changedSince } from '@/lib/night/accepted-of-night';
import type { EventRecord } from '@/lib/store/records';
import { changeSentences } from '@/lib/words/changes';
import type { ClubNames } from '@/lib/words/club';
import { listing } from '@/lib/words/listing';
import type { Voice } from '@/lib/words/voice';

type ClubChangesProps = {
  readonly briefing: Briefing;
  readonly event: EventRecord;
  readonly names: ClubNames;
  readonly voice: Voice;
};

/** What is no longer as the sheets say that went out: whose, what, and why. */
export function ClubChanges({ briefing, event, names, voice }: ClubChangesProps) {
  const moved = useMemo(
    () =>
      briefing.planned
        .map((planned) => ({ id: planned.racer.id, sentences: changesOf(planned, event, voice) }))
        .filter(({ sentences }) => sentences.length > 0),
    [briefing, event, voice],
  );
  if (moved.length === 0) return null;
  return (
    <Notice
      tone="caution"
      title={`Changed since the briefing went out: ${listing(moved.map(({ id }) => names.racer(id)))}.`}
    >
      {moved.map(({ id, sentences }) => (
        <p key={id}>
          <b>{names.racer(id)}</b>. {sentences.join(' ')}
        </p>
      ))}
    </Notice>
  );
}

function changesOf({ racer, plan }: PlannedRacer, event: EventRecord, voice: Voice): readonly string[] {
  const accepted = acceptedAs(
    {
      accepted: racer.accepted,
      fitted: racer.fitted ?? plan.baseline,
      air: event.acceptedAir?.[racer.id] ?? [],
    },
    plan,
  );
  return accepted === null ? [] : changeSentences(changedSince(accepted, plan), plan, voice);
}
