import type { Kysely } from 'kysely';

/** Times are milliseconds since 1970; `Json` columns hold JSON as text. */
type Json = string;

type BoardTable = {
  id: string;
  keep_hash: string;
  follow_hash: string;
  /** As it was posted and changed since. */
  night: Json;
  /** What its followers were told last. */
  memory: Json;
  /** The last answer. */
  body: Json;
  etag: string;
  /** The hours it was last planned with. */
  series: Json;
  /** Starts of the runs as first posted, by machine. */
  first_starts: Json;
  /** Counts what people changed. */
  revision: number;
  /** Counts every write. */
  version: number;
  posted_at: number;
  planned_at: number;
  expires_at: number;
};

type FollowerTable = {
  board_id: string;
  /** Hash of the push address, so that a phone that asks again is not counted twice. */
  id: string;
  endpoint: string;
  p256dh: string;
  auth: string;
  machines: Json;
  /** How clock times are written for it. */
  clock: '24' | '12';
  created_at: number;
};

type MessageTable = {
  board_id: string;
  machine: string;
  /** The same thing said: once for a machine. */
  key: string;
  at: number;
  until: number;
  title: string;
  body: string;
  payload: Json;
  phones: number;
  reached: number;
};

type JobTable = {
  id: string;
  board_id: string;
  kind: 'plan' | 'send' | 'end';
  /** null: done. */
  due_at: number | null;
  lease_until: number;
  lease_by: string;
  tries: number;
  /** Of a message to send, and to whom. */
  machine: string;
  message_key: string;
  follower_id: string;
};

type SettingTable = { name: string; value: string };

export type Tables = {
  board: BoardTable;
  follower: FollowerTable;
  message: MessageTable;
  job: JobTable;
  setting: SettingTable;
};

export type PostedDb = Kysely<Tables>;
export type BoardRow = BoardTable;
export type FollowerRow = FollowerTable;
export type MessageRow = MessageTable;
export type JobRow = JobTable;
