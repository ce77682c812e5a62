'use client';

import { useEffect, useMemo, useRef, useState } from 'react';
import type { Night } from '@/lib/night/night';
import type { Standing } from '@/lib/standing/standing';
import type { Voice } from '@/lib/words/voice';
import { type Look, look, type WatchState, watchState } from '@/lib/words/watch-state';
import { notify } from './notify';

export type Watch = {
  readonly state: WatchState;
  /** What was last said aloud; '' before anything was. */
  readonly said: string;
  /** Whether any act is not the accepted one. */
  readonly differs: boolean;
};

export type Watched = {
  readonly night: Night;
  readonly standing: Standing;
  readonly voice: Voice;
};

/** Compares the plan on the newest forecast with the accepted one, and speaks when the next act is another. */
export function useWatch({ night, standing, voice }: Watched): Watch {
  const { plan, now } = standing;
  const isAsked = standing.question !== null;
  const state = useMemo(() => watchState(night, plan, { ...voice, now }), [night, plan, voice, now]);
  const [said, setSaid] = useState('');
  const before = useRef<Look | null>(null);
  const { revision, value } = night.records.event;
  const { name } = value.event;
  useEffect(() => {
    const { look: next, say } = look(before.current, { state, plan, revision, now, isAsked });
    before.current = next;
    if (say === null) return;
    setSaid(say);
    void notify(name, say);
  }, [state, plan, revision, now, isAsked, name]);
  return { state, said, differs: 'differences' in state && state.differences.length > 0 };
}
