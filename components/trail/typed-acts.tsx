import type { DraftState } from '@/components/draft/use-draft';
import { Button } from '@/components/ui/button';
import { ButtonRow } from '@/components/ui/stack';
import type { TrailDraft } from '@/lib/fields/trail/trail-rows';

/** The way back from what was typed on this page. */
export function TypedActs({ draft }: { readonly draft: DraftState<TrailDraft> }) {
  return (
    <ButtonRow>
      <Button onClick={draft.undo} disabled={!draft.canUndo}>
        Undo
      </Button>
      <Button kind="quiet" onClick={draft.startOver}>
        Start over
      </Button>
    </ButtonRow>
  );
}
