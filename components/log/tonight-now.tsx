import { Notice } from '@/components/ui/notice';
import { Way } from '@/components/ui/way';
import type { Night } from '@/lib/night/night';
import type { Standing } from '@/lib/standing/standing';
import { cautionsFor } from '@/lib/words/cautions';
import { dangerSentences } from '@/lib/words/danger';
import { jobWords } from '@/lib/words/job';
import { questionWords } from '@/lib/words/question';
import { tonightLines } from '@/lib/words/tonight';

type TonightNowProps = { readonly night: Night; readonly standing: Standing };

/** After a lean run: what the plan says now, and what to mind until the plugs agree. Nothing where none was lean. */
export function TonightNow({ night, standing }: TonightNowProps) {
  const { machine, records, zone } = night;
  const [first, ...more] = tonightLines(machine, records.log);
  if (first === undefined) return null;
  const loud = dangerSentences(standing.dangers, standing.plan);
  const { lead, when, lines } = jobWords(standing, zone);
  const question = questionWords(standing, zone);
  return (
    <>
      {loud.length === 0 ? null : <Notice tone="danger" title={loud.join(' ')} />}
      <Notice tone="caution" title={first}>
        {more.map((line) => (
          <p key={line}>{line}</p>
        ))}
        {question === null ? null : (
          <>
            <p>
              <strong>{question.ask}</strong> {question.meaning}
            </p>
            <Way href="/">Answer it on the page of the night</Way>
          </>
        )}
        <p>
          The plan now: <strong>{lead}</strong>
          {when === null ? '.' : `, ${when.clock}, ${when.away}.`}
        </p>
        {lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
        {cautionsFor('first-run').map((text) => (
          <p key={text}>{text}</p>
        ))}
      </Notice>
    </>
  );
}
