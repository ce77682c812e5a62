'use client';

import { useState } from 'react';
import type { Write } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Section } from '@/components/ui/section';
import { ButtonRow } from '@/components/ui/stack';
import type { PullRecord } from '@/lib/compare/compare';
import type { Measure } from '@/lib/fields/compare/pull-rows';
import type { Side } from '@/lib/power/pull';
import { newId } from '@/lib/store/new-id';
import type { ComparisonRecord, LogRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { counted } from '@/lib/words/listing';
import { ComparisonFields } from './comparison-fields';
import { ComparisonResult } from './comparison-result';
import { PullForm } from './pull-form';
import { measuredText, PullTable } from './pull-table';

type SheetProps = {
  readonly stored: Stored<ComparisonRecord>;
  readonly machines: readonly Stored<MachineRecord>[];
  readonly log: readonly Stored<LogRecord>[];
  readonly units: UnitChoice;
  readonly write: Write;
};

/** What the first run was measured by holds for all of them. */
function measureOf([first]: readonly PullRecord[]): Measure | null {
  if (first === undefined) return null;
  if (first.powerHp !== null) return 'power';
  return first.seconds === null ? 'speed' : 'time';
}

/** One comparison: what was changed, the runs of both sides, and what they come to. */
export function ComparisonSheet({ stored, machines, log, units, write }: SheetProps) {
  const record = stored.value;
  const [wanted, setWanted] = useState<Measure>('power');
  const [adding, setAdding] = useState<Side | null>(null);
  const measure = measureOf(record.pulls) ?? wanted;
  const machine = machines.find(({ id }) => id === record.machineId)?.value ?? null;
  const change = (how: (now: ComparisonRecord) => ComparisonRecord, words: string) =>
    write.change({ table: 'comparisons', id: stored.id }, how, words);
  const add = async (pulls: readonly Omit<PullRecord, 'id'>[]) => {
    const named = pulls.map((pull) => ({ id: newId(), ...pull }));
    const refused = await change(
      (now) => ({ ...now, pulls: [...now.pulls, ...named] }),
      `${counted(pulls.length, 'run')} added.`,
    );
    if (refused === undefined) setAdding(null);
    return refused;
  };
  return (
    <>
      <ComparisonFields
        record={record}
        machines={machines}
        measure={measure}
        onMeasure={setWanted}
        onChange={(part) => void change((now) => ({ ...now, ...part }), 'The comparison is changed.')}
      />
      <RunsOfBoth
        record={record}
        units={units}
        onAdd={setAdding}
        onRemove={(pull) =>
          void change(
            (now) => ({ ...now, pulls: now.pulls.filter(({ id }) => id !== pull.id) }),
            `${measuredText(pull, units)} ${pull.side} is deleted.`,
          )
        }
      />
      <ComparisonResult record={record} machine={machine} units={units} />
      <Dialog title="Runs" open={adding !== null && machine !== null} onClose={() => setAdding(null)}>
        {machine === null || adding === null ? null : (
          <PullForm
            comparisonId={`${stored.id}.${adding}`}
            side={adding}
            log={log.filter(({ value }) => value.machineId === record.machineId)}
            {...{ machine, measure, units }}
            onSave={add}
            onCancel={() => setAdding(null)}
          />
        )}
      </Dialog>
    </>
  );
}

type RunsProps = {
  readonly record: ComparisonRecord;
  readonly units: UnitChoice;
  readonly onAdd: (side: Side) => void;
  readonly onRemove: (pull: PullRecord) => void;
};

function RunsOfBoth({ record, units, onAdd, onRemove }: RunsProps) {
  const lacksMachine = record.machineId === null;
  return (
    <Section title="Runs before and after">
      <PullTable pulls={record.pulls} units={units} onRemove={onRemove} />
      <ButtonRow>
        <Button disabled={lacksMachine} onClick={() => onAdd('before')}>
          Add runs before
        </Button>
        <Button disabled={lacksMachine} onClick={() => onAdd('after')}>
          Add runs after
        </Button>
      </ButtonRow>
    </Section>
  );
}
