'use client';

import { type ReactNode, type SyntheticEvent, useEffect, useId, useLayoutEffect, useRef } from 'react';
import { Button } from './button';
import styles from './dialog.module.css';
import { FaultBoundary } from './fault-boundary';

type DialogProps = {
  readonly title: string;
  readonly open: boolean;
  readonly onClose: () => void;
  /** Acts at the foot; without any, a close button stands at the head only. */
  readonly footer?: ReactNode;
  readonly children: ReactNode;
};

/** The browser's own modal dialog: it traps focus, closes on Escape and gives focus back. */
export function Dialog({ title, open, onClose, footer, children }: DialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const element = dialog.current;
    if (!element) return;
    if (open && !element.open) element.showModal();
    if (!open && element.open) element.close();
  }, [open]);
  // Taken away while open it must be shut first: only then does the focus go back to where it came from.
  useLayoutEffect(() => {
    const element = dialog.current;
    return () => {
      if (element?.open === true) element.close();
    };
  }, []);
  /** At once on Escape: that the dialog is shut the browser says later, and the next one may be open by then. */
  const cancel = (cancelled: SyntheticEvent<HTMLDialogElement>) => {
    // A file that was not chosen after all says the same.
    if (cancelled.target !== cancelled.currentTarget) return;
    cancelled.preventDefault();
    onClose();
  };
  return (
    <dialog
      ref={dialog}
      className={styles.dialog}
      aria-labelledby={titleId}
      onCancel={cancel}
      onClose={onClose}
    >
      {open ? (
        <div className={styles.sheet}>
          <div className={styles.head}>
            <h2 id={titleId} className={styles.title}>
              {title}
            </h2>
            <Button kind="quiet" onClick={onClose}>
              Close
            </Button>
          </div>
          <div className={styles.body}>
            <FaultBoundary part={title}>{children}</FaultBoundary>
          </div>
          {footer ? <div className={styles.foot}>{footer}</div> : null}
        </div>
      ) : null}
    </dialog>
  );
}
