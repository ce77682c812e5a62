'use client';

import { useState } from 'react';
import { Choice } from '@/components/ui/choice';
import { Combobox } from '@/components/ui/combobox';
import { NumberField } from '@/components/ui/number-field';
import { Section } from '@/components/ui/section';
import { Select } from '@/components/ui/select';
import { Slider } from '@/components/ui/slider';
import { Columns } from '@/components/ui/stack';
import { Switch } from '@/components/ui/switch';
import { TextArea } from '@/components/ui/text-area';
import { TextField } from '@/components/ui/text-field';

/** The words around a field, in each state it can be in. */
const STATES = [
  { label: 'Plain' },
  { label: 'With a hint', hint: 'A hint says what is wanted.' },
  { label: 'With an error', error: 'That is no number. Type one such as -12.5.' },
] as const;

const OPTIONS = [
  { value: 'lean', label: 'Lean' },
  { value: 'right', label: 'Good' },
  { value: 'rich', label: 'Rich', disabled: true },
] as const;

/** What is typed and chosen. */
export function Asking() {
  const [text, setText] = useState('410');
  const [chosen, setChosen] = useState<(typeof OPTIONS)[number]['value']>('lean');
  const [level, setLevel] = useState(40);
  const [on, setOn] = useState(true);
  return (
    <Section title="Asking">
      {STATES.map((words) => (
        <Columns key={words.label}>
          <TextField {...words} value={text} onChange={setText} />
          <NumberField {...words} value={text} onChange={setText} unit="°C" signed />
          <TextArea {...words} value={text} onChange={setText} />
          <Select {...words} value={chosen} options={OPTIONS} onChange={setChosen} />
          <Combobox
            {...words}
            name={words.label}
            value={text}
            options={['400', '410', '420']}
            onChange={setText}
          />
          <Choice {...words} value={chosen} options={OPTIONS} onChange={setChosen} />
          <Slider
            {...words}
            value={level}
            least={0}
            most={100}
            step={5}
            text={`${level} %`}
            onChange={setLevel}
          />
        </Columns>
      ))}
      <Switch label="Switch" hint="A hint says what it does." checked={on} onChange={setOn} />
      <Switch label="Switch, disabled" checked={on} onChange={setOn} disabled />
    </Section>
  );
}
