import { fail, ok } from '@/lib/result/result';
import { HOUR_MS } from '@/lib/time/instant';
import { parseAnswer } from '@/lib/weather/parse-answer';
import { address, coordinate } from '@/lib/weather/request/address';
import { ask } from '@/lib/weather/request/ask';
import { userAgent } from '@/lib/weather/request/user-agent';
import type { Source, SourceReply } from '@/lib/weather/source';
import { adaptMetNorway } from './adapt';
import { isNordic } from './area';
import { metNorwaySchema } from './schema';

/**
 * MET Norway's terms: name yourself and how to be reached, at most four decimals, no request before Expires, and then
 * a conditional one. Without a contact it answers 403, so it is not asked.
 */
export const MET_NORWAY: Source = {
  name: 'met-norway',
  label: 'MET Norway',
  attribution: 'Weather data from MET Norway (CC BY 4.0)',
  attributionUrl: 'https://api.met.no/',
  covers: () => true,
  isRawModel: (place) => !isNordic(place),
  habits: {
    // `altitude` moves the temperature and nothing else.
    movesTemperatureOnly: true,
    repeatsElevation: true,
    // It begins with the hour under way, and with an earlier one where an answer has waited in a cache. Judgement.
    backMs: 8 * HOUR_MS,
    // Nine to ten days.
    aheadMs: 12 * 24 * HOUR_MS,
  },
  async request({ site, lastModified, deadline }, deps) {
    const { baseUrls, contact } = deps.settings();
    if (contact === null) return fail({ code: 'no-contact' });
    if (baseUrls.metNorway === null) return fail({ code: 'bad-address' });
    const altitude: Readonly<Record<string, string>> =
      site.elevation === null ? {} : { altitude: String(Math.round(site.elevation)) };
    const url = address(baseUrls.metNorway, '/weatherapi/locationforecast/2.0/complete', {
      lat: coordinate(site.latitude),
      lon: coordinate(site.longitude),
      ...altitude,
    });
    const since: Readonly<Record<string, string>> =
      lastModified === null ? {} : { 'if-modified-since': lastModified };
    const headers = { 'user-agent': userAgent(contact), ...since };
    const reply = await ask({ host: 'metNorway', url, headers, deadline }, deps);
    if (!reply.ok) return reply;
    const { validity } = reply.value;
    if (reply.value.kind === 'not-modified')
      return lastModified === null
        ? fail({ code: 'bad-status', status: 304 })
        : ok<SourceReply>({ kind: 'not-modified', validity });
    const wire = parseAnswer(metNorwaySchema, reply.value.json);
    if (!wire.ok) return wire;
    const answer = adaptMetNorway(wire.value);
    return answer.ok ? ok<SourceReply>({ kind: 'answer', answer: answer.value, validity }) : answer;
  },
};
