import ICAL from 'ical.js';

/** One entry of a calendar as an outside reader (ical.js) understands it. */
export type ReadEvent = {
  readonly uid: string;
  readonly sequence: number;
  readonly stamp: number;
  readonly start: number;
  readonly end: number;
  readonly status: string;
  readonly summary: string;
  readonly description: string;
  readonly alarms: readonly { readonly action: string; readonly at: number }[];
  /** As it came, for a comparison of every byte. */
  readonly text: string;
};

export type ReadCalendar = {
  readonly name: string;
  readonly method: string;
  readonly refresh: string;
  readonly events: readonly ReadEvent[];
};

const time = (component: ICAL.Component, name: string): number => {
  const value = component.getFirstPropertyValue(name);
  if (!(value instanceof ICAL.Time)) throw new Error(`${name} is no time`);
  return value.toJSDate().getTime();
};
const text = (component: ICAL.Component, name: string): string =>
  String(component.getFirstPropertyValue(name) ?? '');

export function readCalendar(source: string): ReadCalendar {
  const calendar = new ICAL.Component(ICAL.parse(source));
  return {
    // The reader leaves properties it does not know as they came; text is escaped by RFC 5545, section 3.3.11.
    name: text(calendar, 'x-wr-calname').replace(/\\([\\;,])/g, '$1'),
    method: text(calendar, 'method'),
    refresh: text(calendar, 'refresh-interval'),
    events: calendar.getAllSubcomponents('vevent').map(readEvent),
  };
}

function readEvent(event: ICAL.Component): ReadEvent {
  const [start, end] = [time(event, 'dtstart'), time(event, 'dtend')];
  return {
    uid: text(event, 'uid'),
    sequence: Number(text(event, 'sequence')),
    stamp: time(event, 'dtstamp'),
    start,
    end,
    status: text(event, 'status'),
    summary: text(event, 'summary'),
    description: text(event, 'description'),
    alarms: event.getAllSubcomponents('valarm').map((alarm) => {
      const trigger = alarm.getFirstProperty('trigger')!;
      const from = trigger.getParameter('related') === 'END' ? end : start;
      const value = trigger.getFirstValue();
      if (!(value instanceof ICAL.Duration)) throw new Error('an alarm without a duration');
      return { action: text(alarm, 'action'), at: from + value.toSeconds() * 1000 };
    }),
    text: event.toString(),
  };
}
