'use client';

import { useMemo, useState } from 'react';
import { CopyField } from '@/components/share/copy-field';
import { CopyLines } from '@/components/share/copy-lines';
import { ExactPlace } from '@/components/share/exact-place';
import { useLinkOrigin } from '@/components/share/use-link-origin';
import { Section } from '@/components/ui/section';
import { Stack } from '@/components/ui/stack';
import { airNow } from '@/lib/club/air-now';
import type { Briefing } from '@/lib/club/briefing';
import type { HourSeries } from '@/lib/hours/series';
import type { Club, ClubRecords } from '@/lib/night/club';
import { linkAddress } from '@/lib/share/addresses';
import { packClub } from '@/lib/share/club-link';
import { sharedClubOf } from '@/lib/share/shared-club-of';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { announcement } from '@/lib/words/announcement';
import type { ClubNames } from '@/lib/words/club';
import { briefingText } from '@/lib/words/club-text';
import { linkSizeWords, SENDING } from '@/lib/words/sending';
import { Codes } from './codes';
import { SheetPictures } from './sheet-pictures';

/** What sending and saying the briefing needs. */
export type SendProps = {
  readonly records: ClubRecords;
  readonly club: Club;
  readonly briefing: Briefing;
  readonly names: ClubNames;
  readonly zone: ClockZone;
  readonly now: Instant;
  readonly units: UnitChoice;
};

type SendPanelProps = SendProps & { readonly sharedAt: Instant };

export function SendPanel(props: SendPanelProps) {
  const { records, club, briefing, names, zone, now, units } = props;
  const { event } = records.event.value;
  const hours = briefing.planned[0]?.plan.hours;
  const air = hours === undefined ? null : airNow(hours, now);
  const text = useMemo(
    () => briefingText(briefing, { event, names, zone, now }),
    [briefing, event, names, zone, now],
  );
  return (
    <Stack>
      {club.night === null ? null : <ClubLink {...props} series={club.night.series} />}
      <Section title="Text for a group chat" level={3}>
        <CopyLines label="The briefing as text" hint={SENDING.text} text={text} shareTitle={event.name} />
      </Section>
      <Section title="Announcement" level={3}>
        <CopyLines
          label="Announcement"
          hint={SENDING.say}
          text={announcement(briefing, { air, names, zone, now, units })}
          shareTitle={event.name}
        />
      </Section>
      <SheetPictures {...props} />
    </Stack>
  );
}

function ClubLink({ records, briefing, sharedAt, series }: SendPanelProps & { readonly series: HourSeries }) {
  const [exactPlace, setExactPlace] = useState(false);
  const { origin, about } = useLinkOrigin();
  const { name, place } = records.event.value.event;
  const payload = useMemo(
    () => packClub(sharedClubOf({ records, planned: briefing.planned, series, sharedAt, exactPlace })),
    [records, briefing, series, sharedAt, exactPlace],
  );
  const link = linkAddress(origin, payload);
  return (
    <Section title="One link for everybody" level={3}>
      <p>{SENDING.link}</p>
      {place === undefined ? null : <ExactPlace checked={exactPlace} onChange={setExactPlace} />}
      {about}
      <CopyField
        label="Link to the briefing"
        hint={linkSizeWords(link, briefing.planned.length)}
        text={link}
        shareTitle={name}
      />
      <Codes origin={origin} payload={payload} name={name} />
    </Section>
  );
}
