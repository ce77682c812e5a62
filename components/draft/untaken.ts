/** Text that was typed or pasted beside the fields of a form and is in none of them yet. */
export type Untaken<D> = {
  /** What it is and what can be done, to be asked before saving. */
  readonly words: string;
  /** The draft with it taken over; null where it cannot be taken as it stands. */
  readonly take: ((draft: D) => D) | null;
  /** The draft without it. */
  readonly leave: (draft: D) => D;
};

/** What a form asks before it saves. */
export type UntakenQuestion = {
  readonly words: string;
  readonly takeAndSave: (() => void) | null;
  readonly leaveAndSave: () => void;
};
