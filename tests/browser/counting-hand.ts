import type { Locator } from '@playwright/test';

export type Hand = {
  /** So far: every tap and every field filled is one. */
  readonly acts: () => number;
  readonly tap: (target: Locator) => Promise<void>;
  readonly fill: (target: Locator, text: string) => Promise<void>;
  readonly choose: (target: Locator, label: string) => Promise<void>;
};

/** A hand that counts what a walk asks of it. What a test only looks at costs nothing. */
export function countingHand(): Hand {
  let acts = 0;
  const counted = async (act: Promise<unknown>) => {
    acts += 1;
    await act;
  };
  return {
    acts: () => acts,
    tap: (target) => counted(target.click()),
    fill: (target, text) => counted(target.fill(text)),
    choose: (target, label) => counted(target.selectOption({ label })),
  };
}
