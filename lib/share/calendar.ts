import createCalendar, {
  escape as escapeText,
  ICalAlarmRelatesTo,
  ICalAlarmType,
  type ICalCalendar,
  ICalCalendarMethod,
  type ICalEvent,
  ICalEventStatus,
  ICalEventTransparency,
} from 'ical-generator';
import { localDate } from '@/lib/time/zone';
import { isolated } from '@/lib/words/isolated';
import type { CalendarAct, CalendarContext } from './calendar-act';
import { calendarActs } from './calendar-acts';
import type { LivePlan } from './live-plans';
import { REVISION_MINUTES, revisionNumber } from './revision';
import { stableHash } from './stable-hash';

export type CalendarRequest = {
  /** Of the event. */
  readonly name: string;
  readonly machines: readonly LivePlan[];
  readonly context: CalendarContext;
};

/** An alarm to get the jets out, this long before the first moment they can be fitted. */
const EARLY_ALARM_SECONDS = 15 * 60;

/** A night as iCalendar text (RFC 5545, with the feed's name and refresh interval of RFC 7986); all times in UTC. */
export function calendarText({ name, machines, context }: CalendarRequest): string {
  const calendar = createCalendar({
    // The library escapes what stands in events, not the name of the calendar.
    name: escapeText(clean(name), false),
    prodId: { company: 'Heavy Air', product: 'Night plan', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
    ttl: REVISION_MINUTES * 60,
  });
  const several = machines.length > 1;
  for (const [i, machine] of machines.entries()) {
    const copy = machines.slice(0, i).filter((other) => other.name === machine.name).length;
    const day = localDate(machine.sortedRuns[0]!.start, context.voice.zone);
    for (const act of calendarActs(machine, context)) {
      const uid = `${stableHash([name, day, machine.name, copy, act.key].join('\n'))}@heavy-air`;
      addAct(calendar, act, {
        uid,
        title:
          several || machine.label !== machine.name
            ? `${isolated(machine.label)}: ${act.summary}`
            : act.summary,
      });
    }
  }
  return calendar.toString();
}

function addAct(
  calendar: ICalCalendar,
  act: CalendarAct,
  { uid, title }: { readonly uid: string; readonly title: string },
): void {
  const revised = new Date(act.revisedAt);
  const event = calendar.createEvent({
    id: uid,
    sequence: revisionNumber(act.revisedAt),
    stamp: revised,
    lastModified: revised,
    start: new Date(act.start),
    end: new Date(act.end),
    summary: clean(title),
    description: act.description.map(clean).join('\n'),
    status: act.cancelled ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
    transparency: ICalEventTransparency.TRANSPARENT,
  });
  if (!act.cancelled) addAlarms(event, act, clean(title));
}

function addAlarms(event: ICalEvent, { lastMinutes }: CalendarAct, title: string): void {
  event.createAlarm({ type: ICalAlarmType.display, triggerBefore: EARLY_ALARM_SECONDS, description: title });
  if (lastMinutes <= 0) return;
  const last = event.createAlarm({
    type: ICalAlarmType.display,
    triggerBefore: lastMinutes * 60,
    description: `Begin now at the latest: ${title}`,
  });
  last.relatesTo(ICalAlarmRelatesTo.end);
}

/**
 * Text without control characters, which RFC 5545 does not know in text (section 3.1): each row becomes a space. Half a
 * character, which no encoding knows, becomes the sign for one that is not known.
 */
function clean(text: string): string {
  return text.replace(/\p{Cc}+/gu, ' ').replace(/\p{Cs}/gu, '\ufffd');
}
