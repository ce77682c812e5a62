import { Button } from '@/components/ui/button';
import type { LogRecord, Stored } from '@/lib/store/records';
import { verdictText } from '@/lib/words/log';
import { settingText } from '@/lib/words/settings';
import { together } from '@/lib/words/together';
import styles from './log.module.css';

type NotedRunProps = {
  readonly noted: Stored<LogRecord>;
  readonly onTakeBack: (entry: Stored<LogRecord>) => void;
};

/** What the last tap put into the log, and the way back, which outlasts the toast. */
export function NotedRun({ noted, onTakeBack }: NotedRunProps) {
  const { run, setting } = noted.value;
  return (
    <div className={styles.noted}>
      <p>
        Noted: <strong>{run}</strong>, {verdictText(noted.value)}, on {together(settingText(setting))}.
      </p>
      <Button kind="quiet" onClick={() => onTakeBack(noted)}>
        Take {run} back
      </Button>
    </div>
  );
}
