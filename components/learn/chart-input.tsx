'use client';

import { useState } from 'react';
import { useKeptText } from '@/components/draft/use-kept-text';
import { useWrite } from '@/components/store/use-write';
import { Button } from '@/components/ui/button';
import { Choice } from '@/components/ui/choice';
import { Disclosure } from '@/components/ui/disclosure';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { Table } from '@/components/ui/table';
import { TextArea } from '@/components/ui/text-area';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import { type ChartCellRecord, withChart } from '@/lib/store/machine-history';
import { type ChartForm, MOST_CHART_CELLS, readChart } from '@/lib/store/read-chart';
import type { MachineRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { formatElevation, formatTemperature } from '@/lib/units/format';
import { metre } from '@/lib/units/quantity';
import { chartProblemSentence } from '@/lib/words/chart-problems';
import { counted } from '@/lib/words/listing';

const FORMS: readonly { readonly value: ChartForm; readonly label: string }[] = [
  { value: 'list', label: 'Temperature, elevation, main' },
  { value: 'grid', label: 'A grid' },
];

const HINTS = (units: UnitChoice): Readonly<Record<ChartForm, string>> => ({
  list: `One cell in each line, such as: 20 °F 1000 ft 410. Without a unit: °${units.temperature} and ${units.elevation}.`,
  grid: `Elevations in the first line, a temperature before each other line, mains between. Without a unit: °${units.temperature} and ${units.elevation}.`,
});

const MEANING =
  'A chart is taken to be for the standard atmosphere and 50 % humidity, and for jets of its own: only how its mains move with the air counts.';

type ChartInputProps = { readonly stored: Stored<MachineRecord>; readonly units: UnitChoice };

/** The maker's or a tuner's own chart, typed or pasted; a few cells are enough. */
export function ChartInput({ stored, units }: ChartInputProps) {
  const write = useWrite();
  const [form, setForm] = useState<ChartForm>('list');
  const [text, setText] = useKeptText(`chart.${stored.id}`);
  const [problem, setProblem] = useState<string>();
  const { chart } = stored.value;
  const change = (next: (current: readonly ChartCellRecord[]) => readonly ChartCellRecord[], words: string) =>
    write.change({ table: 'machines', id: stored.id }, (now) => withChart(now, next(now.chart)), words);
  const take = async () => {
    const read = readChart(text, form, units);
    const wrong = read.ok ? fullWords(chart.length, read.value.length) : chartProblemSentence(read.reason);
    setProblem(wrong);
    if (!read.ok || wrong !== undefined) return;
    const refused = await change(
      (current) => [...current, ...read.value].slice(0, MOST_CHART_CELLS),
      `${counted(read.value.length, 'cell')} of the chart are in.`,
    );
    if (refused === undefined) setText('');
  };
  return (
    <Disclosure
      summary={`Your chart: ${chart.length === 0 ? 'none yet' : counted(chart.length, 'cell')}`}
      open={chart.length === 0}
    >
      <Stack>
        <p>{MEANING}</p>
        <Choice label="The chart is" value={form} options={FORMS} onChange={setForm} />
        <TextArea
          label="Cells, typed or pasted"
          hint={HINTS(units)[form]}
          error={problem}
          rows={5}
          value={text}
          onChange={setText}
        />
        <ButtonRow>
          <Button onClick={() => void take()} disabled={text.trim() === ''}>
            Add to the chart
          </Button>
          {chart.length === 0 ? null : (
            <Button kind="quiet" onClick={() => void change(() => [], 'The chart is emptied.')}>
              Empty the chart
            </Button>
          )}
        </ButtonRow>
        {chart.length === 0 ? null : (
          <ChartTable
            chart={chart}
            units={units}
            onRemove={(place) =>
              void change((current) => current.filter((_, i) => i !== place), 'The cell is taken out.')
            }
          />
        )}
      </Stack>
    </Disclosure>
  );
}

/** Why more cells do not fit, and what to do; undefined where they do. */
function fullWords(there: number, more: number): string | undefined {
  if (there + more <= MOST_CHART_CELLS) return undefined;
  return `A chart holds ${MOST_CHART_CELLS} cells and has ${there}; these are ${more} more. Take some out first, or leave some lines away.`;
}

type ChartTableProps = {
  readonly chart: readonly ChartCellRecord[];
  readonly units: UnitChoice;
  readonly onRemove: (place: number) => void;
};

function ChartTable({ chart, units, onRemove }: ChartTableProps) {
  return (
    <Table
      caption="Cells of the chart"
      captionHidden
      rows={chart}
      rowKey={(_, i) => String(i)}
      columns={[
        {
          head: 'Air',
          names: true,
          cell: ({ temperatureC, elevationM }) =>
            `${formatTemperature(celsiusToKelvin(temperatureC), units)}, ${formatElevation(metre(elevationM), units)}`,
        },
        { head: 'Main', figures: true, cell: ({ main }) => main },
        {
          head: <VisuallyHidden>What to do</VisuallyHidden>,
          cell: (_, i) => (
            <Button kind="quiet" aria-label={`Take cell ${i + 1} out`} onClick={() => onRemove(i)}>
              Take out
            </Button>
          ),
        },
      ]}
    />
  );
}
