'use client';

import { useEffect, useMemo, useRef, useState } from 'react';
import type { Night } from '@/components/night/night';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { Voice } from '@/lib/words/voice';
import { notify } from './notify';
import { type Heard, heardOf, newsBetween, type WatchState, watchState } from './watch-state';

export type Watch = {
  readonly state: WatchState;
  /** What was last said aloud; '' before anything was. */
  readonly said: string;
};

/** Compares the plan on the newest forecast with the accepted one, and speaks when the next act is another. */
export function useWatch(night: Night, plan: Plan, voice: Voice & { readonly now: Instant }): Watch {
  const state = useMemo(() => watchState(night, plan, voice), [night, plan, voice]);
  const [said, setSaid] = useState('');
  const before = useRef<Heard | null>(null);
  const { revision, value } = night.records.event;
  const { name } = value.event;
  useEffect(() => {
    const heard = heardOf(state, revision);
    const news = before.current === null ? null : newsBetween(before.current, heard);
    before.current = heard;
    if (news === null) return;
    setSaid(news);
    void notify(name, news);
  }, [state, revision, name]);
  return { state, said };
}
