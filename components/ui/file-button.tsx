'use client';

import styles from './file-button.module.css';

type FileButtonProps = {
  readonly label: string;
  /** Endings and kinds the browser should offer: ".csv,text/csv". */
  readonly accept: string;
  readonly onFile: (file: File) => void;
};

/** The browser's own choice of a file, dressed as a button. The same file can be chosen twice. */
export function FileButton({ label, accept, onFile }: FileButtonProps) {
  return (
    <label className={styles.file}>
      {label}
      <input
        type="file"
        accept={accept}
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file !== undefined) onFile(file);
        }}
      />
    </label>
  );
}
