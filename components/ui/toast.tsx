'use client';

import { createContext, type ReactNode, useCallback, useContext, useEffect, useState } from 'react';
import { Button } from './button';
import styles from './toast.module.css';

export type ToastWords = {
  readonly text: string;
  /** Usually Undo. */
  readonly act?: { readonly label: string; readonly do: () => void };
};

/** Long enough to take a glove off; longer while it holds the focus or the pointer. */
const SHOWN_MS = 20_000;

const ToastContext = createContext<((words: ToastWords) => void) | null>(null);

/** Says what was just done, with a way back. */
export function useToast(): (words: ToastWords) => void {
  const show = useContext(ToastContext);
  if (!show) throw new Error('useToast needs a ToastProvider above it');
  return show;
}

export function ToastProvider({ children }: { readonly children: ReactNode }) {
  const [toast, setToast] = useState<ToastWords | null>(null);
  const [held, setHeld] = useState(false);
  const dismiss = useCallback(() => {
    setToast(null);
    setHeld(false);
  }, []);
  useEffect(() => {
    if (!toast || held) return;
    const timer = setTimeout(dismiss, SHOWN_MS);
    return () => clearTimeout(timer);
  }, [toast, held, dismiss]);
  return (
    <ToastContext value={setToast}>
      {children}
      <output
        className={styles.place}
        onFocus={() => setHeld(true)}
        onBlur={() => setHeld(false)}
        onPointerEnter={() => setHeld(true)}
        onPointerLeave={() => setHeld(false)}
      >
        {toast ? <ToastSheet toast={toast} onDone={dismiss} /> : null}
      </output>
    </ToastContext>
  );
}

function ToastSheet({ toast, onDone }: { readonly toast: ToastWords; readonly onDone: () => void }) {
  const { text, act } = toast;
  return (
    <div className={styles.toast}>
      <p>{text}</p>
      <div className={styles.acts}>
        {act ? (
          <Button
            onClick={() => {
              act.do();
              onDone();
            }}
          >
            {act.label}
          </Button>
        ) : null}
        <Button kind="quiet" onClick={onDone}>
          Dismiss
        </Button>
      </div>
    </div>
  );
}
