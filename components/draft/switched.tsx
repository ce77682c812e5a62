import type { ReactNode } from 'react';
import { Switch } from '@/components/ui/switch';

type SwitchedProps = {
  readonly label: string;
  readonly hint: string;
  /** The group of a draft that is switched on and off. */
  readonly group: {
    readonly value: { readonly on: boolean };
    readonly set: (key: 'on', next: boolean) => void;
  };
  /** What is asked while it is on. */
  readonly children: ReactNode;
};

/** A part of a form that most people leave off. */
export function Switched({ label, hint, group, children }: SwitchedProps) {
  return (
    <>
      <Switch label={label} hint={hint} checked={group.value.on} onChange={(next) => group.set('on', next)} />
      {group.value.on ? children : null}
    </>
  );
}
