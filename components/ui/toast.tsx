'use client';

import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useLayoutEffect,
  useMemo,
  useState,
} from 'react';
import { Button } from './button';
import { classNames } from './class-names';
import { keepInSight } from './keep-focus';
import styles from './toast.module.css';
import { VisuallyHidden } from './visually-hidden';

export type ToastWords = {
  /** Shown and spoken; '' where the page itself shows it to the eye. */
  readonly text: string;
  /** Spoken after it, since the page shows it to the eye. One act is one sentence: nothing else speaks of it. */
  readonly spoken?: string;
  /** Usually Undo. */
  readonly act?: { readonly label: string; readonly do: () => void };
};

/**
 * Long enough to take a glove off. Every key starts it anew: whoever goes by keys or by ear is on the way to it. It
 * stands still while the toast holds the focus or the pointer or lies under a dialog.
 */
const SHOWN_MS = 20_000;
/** Read by then; from now on only the way back stands there, so that it covers no more than itself. */
const READ_MS = 6000;

/** Behind an open dialog nothing is heard, and nothing can be pressed. */
const isCovered = (): boolean => document.querySelector('dialog[open]') !== null;

/** Where Ctrl+Z takes back typing; those with nothing to type have none. */
const FIELDS = 'textarea, input:not([type=radio], [type=checkbox], [type=range], [type=file]), dialog form';

type Toaster = { readonly say: (words: ToastWords) => void; readonly end: () => void };

const ToastContext = createContext<Toaster | null>(null);

function useToaster(): Toaster {
  const toaster = useContext(ToastContext);
  if (!toaster) throw new Error('a toast needs a ToastProvider above it');
  return toaster;
}

/** Says what was just done, with a way back. */
export function useToast(): (words: ToastWords) => void {
  return useToaster().say;
}

/** Ends what was said of the act before, with its way back: the next act begins. */
export function useEndToast(): () => void {
  return useToaster().end;
}

export function ToastProvider({ children }: { readonly children: ReactNode }) {
  const [told, tell] = useState<ToastWords | null>(null);
  const toast = useUncovered(told);
  const [held, setHeld] = useState(false);
  const dismiss = useCallback(() => {
    tell(null);
    setHeld(false);
  }, []);
  const toaster = useMemo(() => ({ say: tell, end: dismiss }), [dismiss]);
  useCountdown(toast !== null && !held, toast, dismiss);
  useUndoKey(toast, dismiss);
  return (
    <ToastContext value={toaster}>
      {children}
      <output
        className={styles.place}
        onFocus={() => setHeld(true)}
        onBlur={() => setHeld(false)}
        onPointerEnter={() => setHeld(true)}
        onPointerLeave={() => setHeld(false)}
      >
        {toast === null ? null : toast.text === '' ? (
          <VisuallyHidden>{toast.spoken}</VisuallyHidden>
        ) : (
          <ToastSheet toast={toast} onDone={dismiss} />
        )}
      </output>
    </ToastContext>
  );
}

/** What was said behind a dialog waits until that is shut: an act often ends a dialog, and would be spoken to nobody. */
function useUncovered(told: ToastWords | null): ToastWords | null {
  const [shown, show] = useState<ToastWords | null>(null);
  useLayoutEffect(() => {
    if (told === null || !isCovered()) return show(told);
    const observer = new MutationObserver(() => {
      if (isCovered()) return;
      observer.disconnect();
      show(told);
    });
    observer.observe(document.body, { childList: true, subtree: true, attributeFilter: ['open'] });
    return () => observer.disconnect();
  }, [told]);
  return shown;
}

function useCountdown(runs: boolean, toast: ToastWords | null, dismiss: () => void): void {
  useEffect(() => {
    if (!runs || toast === null) return;
    const end = (): void => (isCovered() ? restart() : dismiss());
    let timer = setTimeout(end, SHOWN_MS);
    function restart() {
      clearTimeout(timer);
      timer = setTimeout(end, SHOWN_MS);
    }
    document.addEventListener('keydown', restart);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('keydown', restart);
    };
  }, [runs, toast, dismiss]);
}

/** Ctrl+Z or Cmd+Z anywhere but in a field, which has an undo of its own: the way back is far by Tab. */
function useUndoKey(toast: ToastWords | null, dismiss: () => void): void {
  useEffect(() => {
    const act = toast?.act;
    if (act === undefined) return;
    function undo(event: KeyboardEvent) {
      const wanted = event.key.toLowerCase() === 'z' && (event.ctrlKey || event.metaKey) && !event.shiftKey;
      const inField = event.target instanceof Element && event.target.closest(FIELDS) !== null;
      if (!wanted || inField || event.defaultPrevented) return;
      event.preventDefault();
      act?.do();
      dismiss();
    }
    document.addEventListener('keydown', undo);
    return () => document.removeEventListener('keydown', undo);
  }, [toast, dismiss]);
}

function ToastSheet({ toast, onDone }: { readonly toast: ToastWords; readonly onDone: () => void }) {
  const { text, spoken, act } = toast;
  const [read, setRead] = useState<ToastWords | null>(null);
  useEffect(() => {
    // What it tells of may have moved the page, and it covers the foot of the screen.
    keepInSight(document.activeElement);
    const timer = setTimeout(() => setRead(toast), READ_MS);
    return () => clearTimeout(timer);
  }, [toast]);
  const small = act !== undefined && read === toast;
  return (
    // A part with a name of its own: whoever goes by ear jumps to it from anywhere.
    <section className={classNames(styles.toast, small && styles.small)} aria-label="Just done">
      <p>
        {text}
        {spoken === undefined ? null : <VisuallyHidden> {spoken}</VisuallyHidden>}
      </p>
      <div className={styles.acts}>
        {act ? (
          <Button
            aria-keyshortcuts="Control+Z Meta+Z"
            onClick={() => {
              act.do();
              onDone();
            }}
          >
            {act.label}
            <span className={styles.key} aria-hidden="true">
              Ctrl Z
            </span>
          </Button>
        ) : null}
        <Button kind="quiet" className={styles.dismiss} onClick={onDone}>
          Dismiss
        </Button>
      </div>
    </section>
  );
}
