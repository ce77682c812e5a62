import type { Machine, Setting } from '@/lib/carb/machine';
import type { SettingJson } from './event';
import type { ContractProblem, Path } from './problem';

/** What keeps a sent setting from being one of this machine's. */
export function settingProblems(json: SettingJson, machine: Machine, path: Path): readonly ContractProblem[] {
  return [...mainsProblems(json, machine, path), ...trimProblems(json, machine, path)];
}

function mainsProblems({ mains }: SettingJson, machine: Machine, path: Path): readonly ContractProblem[] {
  const { carburettors, marking } = machine;
  if (mains.length !== carburettors.length)
    return [
      {
        path: [...path, 'mains'],
        reason: { code: 'mains-do-not-fit', mains: mains.length, carburettors: carburettors.length },
      },
    ];
  if (marking.kind !== 'list') return [];
  const listed = new Set(marking.jets.map((jet) => jet.size));
  return mains.flatMap((size, i) =>
    listed.has(size)
      ? []
      : [{ path: [...path, 'mains', i], reason: { code: 'jet-not-in-list', size } as const }],
  );
}

function trimProblems({ trim }: SettingJson, machine: Machine, path: Path): readonly ContractProblem[] {
  if (trim === null) return [];
  if (machine.trim === null) return [{ path: [...path, 'trim'], reason: { code: 'trim-not-there' } }];
  const { lowest, highest } = machine.trim;
  if (trim >= lowest && trim <= highest) return [];
  return [{ path: [...path, 'trim'], reason: { code: 'trim-out-of-range', trim, lowest, highest } }];
}

/** The setting with the trim circuit's baseline position where none was named. */
export function settingOf({ mains, trim }: SettingJson, machine: Machine): Setting {
  return { mains, trim: trim ?? machine.trim?.baseline ?? null };
}
