import type { Setting } from '@/lib/carb/machine';
import { isolated } from './isolated';
import { plainName } from './plain-name';
import { settingText } from './settings';

type Said = { readonly setting: Setting };

/** "From the board: Ada has 420 in." */
export function newsSentence(
  news: Readonly<Record<string, readonly Said[]>>,
  nameOf: (id: string) => string,
): string {
  const each = Object.entries(news).flatMap(([id, said]) => {
    const last = said.at(-1);
    return last === undefined
      ? []
      : [`${isolated(plainName(nameOf(id)))} has ${settingText(last.setting)} in`];
  });
  return `From the board: ${each.join(', ')}.`;
}

/** What was changed here and is not on the board yet, and why. */
export function notSentSentence(night: string, why: string): string {
  return `Not on the board of ${isolated(plainName(night))} yet: what you changed last. ${why} It is sent again by itself.`;
}
