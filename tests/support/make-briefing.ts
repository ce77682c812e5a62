import { type Briefing, briefingSteps } from '@/lib/club/briefing';
import type { ClubNight, ClubRacer } from '@/lib/club/racer';

/** The briefing in one go, as no page may ask for it. */
export function makeBriefing(racers: readonly ClubRacer[], night: ClubNight): Briefing {
  const steps = briefingSteps(racers, night);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
