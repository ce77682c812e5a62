import type { PlaceOffset } from '@/lib/plan/place-offset';
import type { EventRecord, ForecastRecord, MachineRecord, Preferences, Stored } from '@/lib/store/records';
import { placeTaught } from './place-taught';

/** The event the person chose, else the newest; null where there is none. */
export function chosenEvent(
  events: readonly Stored<EventRecord>[],
  { eventId }: Preferences,
): Stored<EventRecord> | null {
  return events.find(({ id }) => id === eventId) ?? events.at(-1) ?? null;
}

/** The machine the person chose if it takes part, else the first that does; null where none does. */
export function chosenMachine(
  event: Stored<EventRecord>,
  machines: readonly Stored<MachineRecord>[],
  { machineId }: Preferences,
): Stored<MachineRecord> | null {
  const taking = machines.filter(({ id }) => event.value.machineIds.includes(id));
  return taking.find(({ id }) => id === machineId) ?? taking[0] ?? null;
}

type Tables = {
  readonly events: readonly Stored<EventRecord>[];
  readonly forecasts: readonly Stored<ForecastRecord>[];
};

type OfEvent = { readonly forecast: ForecastRecord | null; readonly placeOffset?: PlaceOffset };

/** What the store holds of an event's weather: the forecast it follows, and what past nights at its place taught. */
export function weatherOfEvent(event: Stored<EventRecord>, { events, forecasts }: Tables): OfEvent {
  const forecast = forecasts.find(({ id }) => id === event.value.forecastId)?.value ?? null;
  const taught = placeTaught(event, { events, forecasts });
  return taught === null ? { forecast } : { forecast, placeOffset: taught };
}
