import * as z from 'zod/mini';
import type { LinkProblem } from '@/lib/contract/link-problem';
import { fail, ok, type Result } from '@/lib/result/result';
import { readSharedNight } from './read-shared-night';
import type { SharedNight } from './shared-night';

const FORMAT = 'heavy-air-night';
const VERSION = 1;
/** Forty racers with everything said take less. */
export const MOST_FILE_CHARACTERS = 1_000_000;

const fileSchema = z.object({ format: z.literal(FORMAT), version: z.int(), night: z.unknown() });

/** A night as a JSON file that people and programs can read. */
export function nightFile(night: SharedNight): string {
  return `${JSON.stringify({ format: FORMAT, version: VERSION, night }, null, 2)}\n`;
}

export function readNightFile(text: string): Result<SharedNight, LinkProblem> {
  if (text.trim() === '') return fail({ code: 'empty' });
  if (text.length > MOST_FILE_CHARACTERS) return fail({ code: 'too-long', limit: MOST_FILE_CHARACTERS });
  const json = parsed(text);
  if (!json.ok) return json;
  const file = fileSchema.safeParse(json.value);
  if (!file.success) return fail({ code: 'not-a-night', path: '', message: '' });
  if (file.data.version > VERSION) return fail({ code: 'newer-version', version: String(file.data.version) });
  return readSharedNight(file.data.night);
}

function parsed(text: string): Result<unknown, LinkProblem> {
  try {
    return ok(JSON.parse(text));
  } catch {
    return fail({ code: 'damaged' });
  }
}
