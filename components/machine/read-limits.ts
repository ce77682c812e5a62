import type { FieldReader } from '@/components/draft/field-reader';
import type { LimitsDraft, ResponseDraft } from './machine-draft';

export function readLimits(draft: LimitsDraft, reader: FieldReader): unknown {
  const risk = reader.ratio({ name: 'limits.risk', text: draft.risk, example: '5' });
  if (risk !== undefined && (risk < 0.001 || risk > 0.5))
    reader.complain('limits.risk', 'Type a percentage from 0.1 to 50.');
  return {
    leanPercent: reader.number({ name: 'limits.leanPercent', text: draft.leanPercent, example: '2' }),
    richPercent: reader.number({ name: 'limits.richPercent', text: draft.richPercent, example: '5' }),
    risk,
  };
}

/** The person's own response; undefined for the default. */
export function readResponse(draft: ResponseDraft, reader: FieldReader): unknown {
  if (!draft.own) return undefined;
  const number = (key: keyof ResponseDraft, text: string, example: string): number | undefined =>
    reader.number({ name: `response.${key}`, text, example });
  return {
    pressureExponent: number('pressureExponent', draft.pressureExponent, '0.65'),
    temperatureExponent: number('temperatureExponent', draft.temperatureExponent, '0.65'),
    pressureSd: number('pressureSd', draft.pressureSd, '0.12'),
    temperatureSd: number('temperatureSd', draft.temperatureSd, '0.12'),
    correlation: number('correlation', draft.correlation, '0.7'),
    origin: draft.origin,
  };
}
