import { Disclosure } from '@/components/ui/disclosure';
import { Stack } from '@/components/ui/stack';
import type { Briefing } from '@/lib/club/briefing';
import type { ClubNames } from '@/lib/words/club';
import { clubWarnings } from '@/lib/words/club-warnings';
import { counted } from '@/lib/words/listing';
import type { Voice } from '@/lib/words/voice';

type ClubWarningsProps = { readonly briefing: Briefing; readonly names: ClubNames; readonly voice: Voice };

/** What must be known beside the plans; a few stand open, many fold away behind their number. */
const MOST_OPEN = 3;

export function ClubWarnings({ briefing, names, voice }: ClubWarningsProps) {
  const warnings = clubWarnings(briefing, names, voice);
  if (warnings.length === 0) return null;
  return (
    <Disclosure
      summary={`Also to know: ${counted(warnings.length, 'caution')}`}
      open={warnings.length <= MOST_OPEN}
    >
      <Stack>
        {warnings.map((warning) => (
          <p key={warning}>{warning}</p>
        ))}
      </Stack>
    </Disclosure>
  );
}
