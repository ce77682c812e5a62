import { fileText } from '@/components/ui/file-text';
import { MOST_FILE_CHARACTERS, readNightFile } from '@/lib/share/night-file';
import type { OpenedNight } from '@/lib/share/shared-links';

export async function readSharedFiles(files: readonly File[]): Promise<readonly OpenedNight[]> {
  return Promise.all(
    files.map(async (file) => ({
      label: file.name,
      read: readNightFile(await fileText(file, MOST_FILE_CHARACTERS)),
    })),
  );
}
