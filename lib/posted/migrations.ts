import type { Kysely, Migration } from 'kysely';

/** Migrations by name, in the order in which they go up. One that has gone out is never changed. */
export const POSTED_MIGRATIONS: Readonly<Record<string, Migration>> = {
  '001-boards': { up: firstTables },
  '002-clock': { up: clockOfFollowers },
};

async function firstTables({ schema }: Kysely<unknown>): Promise<void> {
  await schema
    .createTable('board')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('keep_hash', 'text', (c) => c.notNull())
    .addColumn('follow_hash', 'text', (c) => c.notNull())
    .addColumn('night', 'text', (c) => c.notNull())
    .addColumn('memory', 'text', (c) => c.notNull())
    .addColumn('body', 'text', (c) => c.notNull())
    .addColumn('etag', 'text', (c) => c.notNull())
    .addColumn('series', 'text', (c) => c.notNull())
    .addColumn('first_starts', 'text', (c) => c.notNull())
    .addColumn('revision', 'integer', (c) => c.notNull())
    .addColumn('version', 'integer', (c) => c.notNull())
    .addColumn('posted_at', 'double precision', (c) => c.notNull())
    .addColumn('planned_at', 'double precision', (c) => c.notNull())
    .addColumn('expires_at', 'double precision', (c) => c.notNull())
    .execute();
  await schema
    .createTable('follower')
    .addColumn('board_id', 'text', (c) => c.notNull())
    .addColumn('id', 'text', (c) => c.notNull())
    .addColumn('endpoint', 'text', (c) => c.notNull())
    .addColumn('p256dh', 'text', (c) => c.notNull())
    .addColumn('auth', 'text', (c) => c.notNull())
    .addColumn('machines', 'text', (c) => c.notNull())
    .addColumn('created_at', 'double precision', (c) => c.notNull())
    .addPrimaryKeyConstraint('follower_key', ['board_id', 'id'])
    .execute();
  await schema
    .createTable('message')
    .addColumn('board_id', 'text', (c) => c.notNull())
    .addColumn('machine', 'text', (c) => c.notNull())
    .addColumn('key', 'text', (c) => c.notNull())
    .addColumn('at', 'double precision', (c) => c.notNull())
    .addColumn('until', 'double precision', (c) => c.notNull())
    .addColumn('title', 'text', (c) => c.notNull())
    .addColumn('body', 'text', (c) => c.notNull())
    .addColumn('payload', 'text', (c) => c.notNull())
    .addColumn('phones', 'integer', (c) => c.notNull())
    .addColumn('reached', 'integer', (c) => c.notNull())
    .addPrimaryKeyConstraint('message_key', ['board_id', 'machine', 'key'])
    .execute();
  await jobTable(schema);
}

/** Phones that followed before were told everything on the 24-hour clock. */
async function clockOfFollowers({ schema }: Kysely<unknown>): Promise<void> {
  await schema
    .alterTable('follower')
    .addColumn('clock', 'text', (c) => c.notNull().defaultTo('24'))
    .execute();
}

async function jobTable(schema: Kysely<unknown>['schema']): Promise<void> {
  await schema
    .createTable('job')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('board_id', 'text', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('due_at', 'double precision')
    .addColumn('lease_until', 'double precision', (c) => c.notNull())
    .addColumn('lease_by', 'text', (c) => c.notNull())
    .addColumn('tries', 'integer', (c) => c.notNull())
    .addColumn('machine', 'text', (c) => c.notNull())
    .addColumn('message_key', 'text', (c) => c.notNull())
    .addColumn('follower_id', 'text', (c) => c.notNull())
    .execute();
  await schema.createIndex('job_due').on('job').column('due_at').execute();
  await schema.createIndex('job_board').on('job').column('board_id').execute();
  await schema
    .createTable('setting')
    .addColumn('name', 'text', (c) => c.primaryKey())
    .addColumn('value', 'text', (c) => c.notNull())
    .execute();
}
