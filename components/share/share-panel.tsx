'use client';

import { useMemo, useState } from 'react';
import { Disclosure } from '@/components/ui/disclosure';
import { Section } from '@/components/ui/section';
import { Stack } from '@/components/ui/stack';
import { Way } from '@/components/ui/way';
import type { Night } from '@/lib/night/night';
import type { Plan } from '@/lib/plan/types';
import { linkAddress, OPEN_PAGE } from '@/lib/share/addresses';
import { packNight } from '@/lib/share/night-link';
import { sharedNightOf } from '@/lib/share/shared-night-of';
import type { Instant } from '@/lib/time/instant';
import type { UnitChoice } from '@/lib/units/choice';
import { CopyField } from './copy-field';
import { ExactPlace } from './exact-place';
import { FeedAddresses } from './feed-addresses';
import { FileButtons } from './file-buttons';
import { PostPanel } from './post-panel';
import { QrCode } from './qr-code';
import styles from './share.module.css';
import { useLinkOrigin } from './use-link-origin';

type SharePanelProps = {
  readonly night: Night;
  readonly plan: Plan;
  readonly units: UnitChoice;
  readonly sharedAt: Instant;
};

/** Links longer than this are cut by some chat and mail programs. */
const SAFE_CHARACTERS = 2000;

export function SharePanel({ night, plan, units, sharedAt }: SharePanelProps) {
  const [exactPlace, setExactPlace] = useState(false);
  const shared = useMemo(
    () => sharedNightOf({ night, plan, sharedAt, exactPlace }),
    [night, plan, sharedAt, exactPlace],
  );
  const payload = useMemo(() => packNight(shared), [shared]);
  const nights = useMemo(() => [night.records], [night.records]);
  const { origin, about } = useLinkOrigin();
  const link = linkAddress(origin, payload);
  return (
    <div className={styles.panel}>
      <Stack>
        {shared.event.place === undefined ? null : (
          <ExactPlace checked={exactPlace} onChange={setExactPlace} />
        )}
        {about}
        <CopyField
          label="Link to this night"
          hint={
            link.length > SAFE_CHARACTERS
              ? 'A long link, which some chat programs cut off: the file is safer.'
              : 'Opens as a preview and changes nothing for whoever opens it.'
          }
          text={link}
          shareTitle={shared.event.name}
        />
      </Stack>
      <Stack>
        <Disclosure summary="Code to scan">
          <QrCode text={link} title={`Link to ${shared.event.name}`} />
        </Disclosure>
        <Disclosure summary="Calendar and table that follow the forecast">
          <FeedAddresses night={shared} payload={payload} origin={origin} units={units} />
        </Disclosure>
        <Disclosure summary="Files">
          <FileButtons night={shared} plan={plan} units={units} />
        </Disclosure>
        <Section title="Board" level={3}>
          <PostPanel nights={nights} />
        </Section>
        <Way href={OPEN_PAGE}>Open a link or a file</Way>
      </Stack>
    </div>
  );
}
