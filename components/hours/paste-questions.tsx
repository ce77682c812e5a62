'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Choice } from '@/components/ui/choice';
import { type Option, Select } from '@/components/ui/select';
import { Columns, Stack } from '@/components/ui/stack';
import type { ColumnMeaning, PasteOptions, PasteQuestion } from '@/lib/hours/pasted';
import type { PasteAnswers } from './use-paste';

type QuestionsProps = {
  readonly questions: readonly PasteQuestion[];
  readonly answer: (answers: PasteAnswers) => void;
};

/** What the pasted text leaves open. */
export function PasteQuestions({ questions, answer }: QuestionsProps) {
  return (
    <Stack>
      {questions.map((question) => (
        <Question key={question.code} question={question} answer={answer} />
      ))}
    </Stack>
  );
}

type QuestionProps = {
  readonly question: PasteQuestion;
  readonly answer: (answers: PasteAnswers) => void;
};

function Question({ question, answer }: QuestionProps) {
  switch (question.code) {
    case 'no-times':
      return null; // The first hour is always given; it stands in a field of its own.
    case 'which-column':
      return <ColumnQuestion columns={question.columns} sample={question.sample} answer={answer} />;
    case 'comma-could-be-decimal':
      return (
        <Choice
          label={`What is the comma in “${question.text}”?`}
          value={null}
          options={COMMAS}
          onChange={(commaIs) => answer({ commaIs })}
        />
      );
    case 'day-or-month':
      return (
        <Choice
          label={`Which comes first in “${question.text}”?`}
          value={null}
          options={ORDERS}
          onChange={(dayOrder) => answer({ dayOrder })}
        />
      );
    case 'am-or-pm':
      return (
        <Choice
          label={`“${question.text}” and the times after it: morning or evening?`}
          value={null}
          options={CLOCKS}
          onChange={(clock) => answer({ clock })}
        />
      );
    case 'humidity-scale':
      return (
        <Choice
          label="The humidities are all 0 or 1. What does 1 mean?"
          value={null}
          options={SCALES}
          onChange={(humidityScale) => answer({ humidityScale })}
        />
      );
  }
}

type Answer<K extends keyof PasteOptions> = Option<NonNullable<PasteOptions[K]> & string>;

const COMMAS: readonly Answer<'commaIs'>[] = [
  { value: 'decimal', label: 'Decimal comma' },
  { value: 'separator', label: 'Between two columns' },
];
const ORDERS: readonly Answer<'dayOrder'>[] = [
  { value: 'day-first', label: 'The day' },
  { value: 'month-first', label: 'The month' },
];
const CLOCKS: readonly Answer<'clock'>[] = [
  { value: 'starts-pm', label: 'First is PM' },
  { value: 'starts-am', label: 'First is AM' },
  { value: '24-hour', label: '24-hour clock' },
];
const SCALES: readonly Answer<'humidityScale'>[] = [
  { value: 'percent', label: '1 %' },
  { value: 'ratio', label: '100 %' },
];
const MEANINGS: readonly Option<ColumnMeaning>[] = [
  { value: 'temperature', label: 'Temperature' },
  { value: 'humidity', label: 'Humidity' },
  { value: 'dew-point', label: 'Dew point' },
  { value: 'pressure', label: 'Pressure' },
  { value: 'time', label: 'Time' },
  { value: 'date', label: 'Date' },
  { value: 'ignored', label: 'Leave out' },
];

type ColumnQuestionProps = {
  readonly columns: readonly number[];
  readonly sample: readonly string[];
  readonly answer: (answers: PasteAnswers) => void;
};

function ColumnQuestion({ columns, sample, answer }: ColumnQuestionProps) {
  const [meanings, setMeanings] = useState<Readonly<Record<number, ColumnMeaning>>>({});
  const meaningOf = (column: number): ColumnMeaning =>
    meanings[column] ?? (column === columns[0] ? 'temperature' : 'ignored');
  const last = Math.max(...columns);
  return (
    <>
      <Columns>
        {columns.map((column, i) => (
          <Select
            key={column}
            label={`Column ${column + 1}, such as ${sample[i] ?? ''}`}
            value={meaningOf(column)}
            options={MEANINGS}
            onChange={(meaning) => setMeanings((before) => ({ ...before, [column]: meaning }))}
          />
        ))}
      </Columns>
      <Button
        onClick={() =>
          answer({
            columns: Array.from({ length: last + 1 }, (_, column) =>
              columns.includes(column) ? meaningOf(column) : undefined,
            ),
          })
        }
      >
        Read it so
      </Button>
    </>
  );
}
