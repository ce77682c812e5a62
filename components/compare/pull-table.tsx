'use client';

import { Button } from '@/components/ui/button';
import { Table } from '@/components/ui/table';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import type { PullRecord } from '@/lib/compare/compare';
import type { UnitChoice } from '@/lib/units/choice';
import { formatNumber } from '@/lib/units/format';
import { provenAirText } from '@/lib/words/baseline';
import { secondsText, speedText, speedUnit } from '@/lib/words/log';
import { settingText } from '@/lib/words/settings';

type PullTableProps = {
  readonly pulls: readonly PullRecord[];
  readonly units: UnitChoice;
  readonly onRemove: (pull: PullRecord) => void;
};

export function PullTable({ pulls, units, onRemove }: PullTableProps) {
  const rows = [
    ...pulls.filter(({ side }) => side === 'before'),
    ...pulls.filter(({ side }) => side === 'after'),
  ];
  return (
    <Table
      caption="Runs"
      captionHidden
      rows={rows}
      rowKey={({ id }) => id}
      empty="No run yet. Add those of before the part, then those of after it."
      columns={[
        { head: 'Side', names: true, cell: ({ side }) => side },
        { head: 'Measured', cell: (pull) => measuredText(pull, units) },
        { head: 'Jets', cell: ({ setting }) => settingText(setting) },
        { head: 'Air', cell: ({ air }) => provenAirText(air, units) },
        { head: 'Note', wideOnly: true, cell: ({ note }) => note },
        {
          head: <VisuallyHidden>What to do</VisuallyHidden>,
          cell: (pull) => (
            <Button
              kind="quiet"
              aria-label={`Delete ${measuredText(pull, units)} ${pull.side}`}
              onClick={() => onRemove(pull)}
            >
              Delete
            </Button>
          ),
        },
      ]}
    />
  );
}

export function measuredText({ powerHp, seconds, speedKmh }: PullRecord, units: UnitChoice): string {
  if (powerHp !== null) return `${formatNumber(powerHp, 1)} hp`;
  if (speedKmh !== null) return speedText(speedKmh, speedUnit(units));
  return secondsText(seconds ?? 0);
}
