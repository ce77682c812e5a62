'use client';

import { useState } from 'react';
import { type StoreReads, useStoreHealth, useStoreReads } from '@/components/store/store-provider';
import { useWriteAll } from '@/components/store/use-write-all';
import { Button } from '@/components/ui/button';
import { Dialog } from '@/components/ui/dialog';
import { FileButton } from '@/components/ui/file-button';
import { fileText } from '@/components/ui/file-text';
import { Notice } from '@/components/ui/notice';
import { saveFile } from '@/components/ui/save-file';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { Table } from '@/components/ui/table';
import { MOST_BACKUP_CHARACTERS, readBackup, writeBackup } from '@/lib/store/backup-file';
import {
  type ImportMode,
  type ImportPreview,
  type NamedBackup,
  previewImport,
  withBackup,
} from '@/lib/store/backup-import';
import { asOfAnother, isOfCopy } from '@/lib/store/copied-profile';
import { ownDevice, renameDevice } from '@/lib/store/device';
import { backupProblemSentence, OF_COPY, tableText } from '@/lib/words/backup';
import { dateText } from '@/lib/words/day-text';
import { homeScreenSentence, keepingSentence } from '@/lib/words/keeping';
import { stayAwaySentence } from '@/lib/words/merged';
import { MergeChanges } from './merge-changes';
import { SetAsideWay } from './set-aside-way';
import { useFieldVoice } from './use-field-voice';

type BackupDialogProps = { readonly open: boolean; readonly onClose: () => void };

/** Everything of this browser as one file: out, and in again after a look at what it would do. */
export function BackupDialog({ open, onClose }: BackupDialogProps) {
  const store = useStoreReads();
  return (
    <Dialog title="Backup" open={open} onClose={onClose}>
      {store === null ? <p>Opening the store…</p> : <BackupSheet store={store} onClose={onClose} />}
    </Dialog>
  );
}

type SheetProps = { readonly store: StoreReads; readonly onClose: () => void };

type Opened =
  | { readonly file: string; readonly refused: string }
  | {
      readonly file: string;
      readonly backup: NamedBackup;
      /** Another browser has written under the name of this one. */
      readonly ofCopy: boolean;
      readonly preview: ImportPreview;
    };

function BackupSheet({ store, onClose }: SheetProps) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const health = useStoreHealth();
  const save = async () => {
    const now = new Date().toISOString();
    const text = writeBackup(await store.snapshot(), now, health?.setAside);
    saveFile({ name: `heavy-air-${now.slice(0, 10)}.json`, type: 'application/json', text });
  };
  const read = async (file: File) => setOpened(await openFile(store, file));
  return (
    <Stack>
      <p>
        Machines, boxes, nights, runs and comparisons live in this browser and nowhere else. A backup file
        keeps them safe and carries them to another device.
      </p>
      <Keeping />
      <ButtonRow>
        <Button kind="primary" onClick={() => void save()}>
          Save a backup file
        </Button>
        <FileButton
          label="Open a backup file"
          accept=".json,application/json"
          onFile={(file) => void read(file)}
        />
      </ButtonRow>
      <SetAsideWay />
      {opened === null ? null : 'refused' in opened ? (
        <Notice tone="danger" title={`${opened.file} was not taken in.`}>
          <p>{opened.refused}</p>
        </Notice>
      ) : (
        <Preview {...opened} onDone={onClose} onLeave={() => setOpened(null)} />
      )}
    </Stack>
  );
}

/** Whether the browser has promised to keep what is here, and what else keeps it. */
function Keeping() {
  const health = useStoreHealth();
  if (health === null) return null;
  const homeScreen = homeScreenSentence(health);
  return (
    <>
      <p>{keepingSentence(health)}</p>
      {homeScreen === null ? null : <p>{homeScreen}</p>}
    </>
  );
}

async function openFile(store: StoreReads, file: File): Promise<Opened> {
  const backup = readBackup(await fileText(file, MOST_BACKUP_CHARACTERS));
  if (!backup.ok) return { file: file.name, refused: backupProblemSentence(backup.reason) };
  const [current, device] = [await store.snapshot(), ownDevice()];
  const ofCopy = isOfCopy(backup.value, current, device);
  const read = ofCopy ? asOfAnother(backup.value, device) : backup.value;
  const named = { ...read, name: file.name };
  return { file: file.name, backup: named, ofCopy, preview: previewImport(named, current) };
}

type PreviewProps = Extract<Opened, { backup: NamedBackup }> & {
  readonly onDone: () => void;
  readonly onLeave: () => void;
};

function Preview({ file, backup, ofCopy, preview, onDone, onLeave }: PreviewProps) {
  const writeAll = useWriteAll();
  const stayAway = stayAwaySentence(preview.changes, useFieldVoice(backup.tables.machines));
  const lost = preview.tables.reduce((sum, table) => sum + table.lost, 0);
  const take = async (mode: ImportMode) => {
    const done = await writeAll((current) => withBackup(current, backup, mode), `${file} is taken in.`);
    if (!done.ok) return;
    if (ofCopy) renameDevice();
    onDone();
  };
  return (
    <Stack>
      <p>
        {file} is whole. It was saved on {dateText(backup.madeAt)}. Nothing is changed yet.
      </p>
      <Table
        caption="What is in the file"
        rows={preview.tables.filter(({ inFile }) => inFile > 0)}
        rowKey={({ table }) => table}
        columns={[
          { head: 'Records', names: true, cell: ({ table }) => tableText(table) },
          { head: 'In the file', figures: true, cell: ({ inFile }) => inFile },
        ]}
      />
      <h3>What a merge would change</h3>
      {ofCopy ? <p>{OF_COPY}</p> : null}
      <MergeChanges changes={preview.changes} machines={backup.tables.machines} />
      {stayAway === null ? null : <p>{stayAway}</p>}
      <p>
        A merge goes field by field, by what each device knew of the other, not by their clocks. What was
        removed on one of them goes on the other too; what loses or goes is set aside, to be taken back.
        Replace leaves the file’s records and no others
        {lost > 0 ? `: ${lost} of here would go or go back` : ''}.
      </p>
      <ButtonRow>
        <Button kind="primary" onClick={() => void take('merge')}>
          Merge
        </Button>
        {stayAway === null ? null : (
          <Button onClick={() => void take('bring-back')}>Merge, and bring back what was removed</Button>
        )}
        <Button onClick={() => void take('replace')}>Replace what is here</Button>
        <Button kind="quiet" onClick={onLeave}>
          Leave it
        </Button>
      </ButtonRow>
    </Stack>
  );
}
