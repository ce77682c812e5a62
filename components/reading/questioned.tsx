import { Button } from '@/components/ui/button';
import type { kindMeant } from './kind-meant';

type Meant = NonNullable<ReturnType<typeof kindMeant>>;

type QuestionedProps = {
  /** The kind that would explain the pressure; null where none does. */
  readonly meant: Meant | null;
  readonly onMeant: (kind: Meant) => void;
  readonly onKeep: () => void;
};

/** The answers to a question about a reading: what was meant, or that it is right. */
export function Questioned({ meant, onMeant, onKeep }: QuestionedProps) {
  return (
    <>
      {meant === null ? null : (
        <Button size="large" wide onClick={() => onMeant(meant)}>
          {meant === 'station' ? 'It is station pressure' : 'It is a sea-level number'}
        </Button>
      )}
      <Button size="large" wide onClick={onKeep}>
        It is right as typed: use it
      </Button>
    </>
  );
}
