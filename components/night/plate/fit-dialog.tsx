'use client';

import { useEffect, useState } from 'react';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { Select } from '@/components/ui/select';
import { whenAtRest } from '@/components/ui/when-at-rest';
import type { Machine, Setting } from '@/lib/carb/machine';
import { trimPositions } from '@/lib/carb/trim';
import { cautionsFor } from '@/lib/words/cautions';
import { IT_IS_IN } from '@/lib/words/it-is-in';
import styles from './fit-dialog.module.css';

type FitDialogProps = {
  readonly machine: Machine;
  readonly fitted: Setting;
  readonly onFit: (setting: Setting) => void;
  /** Plans what follows from `onFit` before it is pressed; hands back the way to call it off. */
  readonly ahead?: (setting: Setting) => () => void;
  readonly onClose: () => void;
};

/** What is really in the engine, where that is not what the plan takes for granted. */
export function FitDialog({ machine, fitted, onFit, ahead, onClose }: FitDialogProps) {
  const [mains, setMains] = useState<readonly number[]>(fitted.mains);
  const [trim, setTrim] = useState<number | null>(fitted.trim);
  useEffect(() => {
    if (ahead === undefined) return;
    let stop = (): void => undefined;
    const leave = whenAtRest(() => {
      stop = ahead({ mains, trim });
    });
    return () => {
      leave();
      stop();
    };
  }, [ahead, mains, trim]);
  const sizes = [...new Set([...machine.box.map(({ size }) => size), ...fitted.mains])].sort((a, b) => a - b);
  const options = sizes.map((size) => ({ value: String(size), label: String(size) }));
  const replace = (place: number, size: number) =>
    setMains(mains.map((main, index) => (index === place ? size : main)));
  return (
    <Dialog
      title="What is in now"
      open
      onClose={onClose}
      footer={
        <Button kind="primary" size="act" wide onClick={() => onFit({ mains, trim })}>
          {IT_IS_IN}
        </Button>
      }
    >
      <div className={styles.jets}>
        {mains.map((main, place) => (
          <Select
            // biome-ignore lint/suspicious/noArrayIndexKey: carburettors are told apart by their place
            key={place}
            label={mains.length === 1 ? 'Main jet' : `Main jet, carburettor ${place + 1}`}
            value={String(main)}
            options={options}
            onChange={(size) => replace(place, Number(size))}
          />
        ))}
        {machine.trim === null ? null : (
          <Select
            label="Trim"
            value={String(trim)}
            options={trimPositions(machine.trim).map((position) => ({
              value: String(position),
              label: String(position),
            }))}
            onChange={(position) => setTrim(Number(position))}
          />
        )}
      </div>
      <ul>
        {cautionsFor('swap').map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </Dialog>
  );
}
