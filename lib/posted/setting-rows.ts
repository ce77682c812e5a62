import type { PostedDb } from './tables';

/** A setting that all servers of one database share: the first to make it decides. */
export async function settingOr(db: PostedDb, name: string, make: () => string): Promise<string> {
  const read = async () =>
    (await db.selectFrom('setting').select('value').where('name', '=', name).executeTakeFirst())?.value;
  const known = await read();
  if (known !== undefined) return known;
  await db
    .insertInto('setting')
    .values({ name, value: make() })
    .onConflict((at) => at.doNothing())
    .execute();
  const kept = await read();
  if (kept === undefined) throw new Error(`the setting ${name} was written and is not there`);
  return kept;
}
