import { Disclosure } from '@/components/ui/disclosure';
import { Notice } from '@/components/ui/notice';
import { hangingIdleSteps } from '@/lib/carb/hanging-idle';
import type { Machine } from '@/lib/carb/machine';
import { bigPilotCost } from '@/lib/trail/pilot-cost';
import type { SeasonSetup } from '@/lib/trail/season';
import { bigPilotSentence, hangingIdleSentence, pilotSentence, screwWaySentence } from '@/lib/words/screw';
import { isLeanDay, leanDaySentence } from '@/lib/words/season';
import { jetsText } from '@/lib/words/settings';
import { CUTAWAY_ADVICE, SEASON_LIMITS } from '@/lib/words/trail-advice';
import styles from './trail.module.css';

type SeasonAdviceProps = { readonly setups: readonly SeasonSetup[]; readonly machine: Machine };

/** What the numbers mean for a hand with a screwdriver, and what they do not reach. */
export function SeasonAdvice({ setups, machine }: SeasonAdviceProps) {
  const { pilot } = machine;
  const coldest = setups.reduce((a, b) =>
    b.condition.air.temperature < a.condition.air.temperature ? b : a,
  );
  return (
    <>
      <BoxNotice setups={setups} machine={machine} />
      <ul className={styles.advice}>
        {pilot === null ? (
          <li>
            The pilot of this machine is not described. Add it on the <a href="/machines">machines</a> page to
            see the screw.
          </li>
        ) : (
          <>
            <li>{screwWaySentence(pilot)}</li>
            {setups.map((setup) => (
              <li key={`${setup.condition.name} ${setup.condition.air.temperature}`}>
                {setup.condition.name}: {setup.pilot === null ? null : pilotSentence(setup.pilot, pilot)}
              </li>
            ))}
          </>
        )}
        {SEASON_LIMITS.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <Disclosure summary="Where the numbers stop: hanging idle, too big a pilot, slide cutaway">
        <div className={styles.practice}>
          {pilot === null || coldest.pilot === null ? null : (
            <>
              <h3>The idle hangs high after a hard run</h3>
              <ol>
                {hangingIdleSteps({ ...pilot, jet: coldest.pilot.jet }, coldest.pilot.turns).map((step) => (
                  <li key={step.act}>{hangingIdleSentence(step)}</li>
                ))}
              </ol>
              <h3>A pilot that is too big</h3>
              <p>{bigPilotSentence(bigPilotCost(pilot, coldest.logNeed, machine.richPowerLoss), pilot)}</p>
            </>
          )}
          <h3>Slide cutaway after boring</h3>
          <ul>
            {CUTAWAY_ADVICE.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          <p className={styles.source}>Common practice, no source, but for the cost of the pilot.</p>
        </div>
      </Disclosure>
    </>
  );
}

/** Days for which the box has no safe main. */
function BoxNotice({ setups, machine }: SeasonAdviceProps) {
  const lacking = setups.flatMap(({ condition, warnings }) =>
    warnings.flatMap((warning) =>
      warning.code === 'no-jet-rich-enough'
        ? [
            `${condition.name}: no jet owned is rich enough. ${warning.sizes === null ? 'None on the list would be.' : `Borrow ${jetsText(warning.sizes)}.`}`,
          ]
        : [],
    ),
  );
  const lean = setups.filter((setup) => isLeanDay(setup, machine.limits)).map(leanDaySentence);
  const far = setups.filter(({ warnings }) => warnings.some(({ code }) => code === 'far-from-baseline-air'));
  return (
    <>
      {lean.length === 0 ? null : (
        <Notice tone="danger" title={lacking.length === 0 ? 'Lean.' : 'The box ends.'}>
          {[...lacking, ...lean].map((text) => (
            <p key={text}>{text}</p>
          ))}
        </Notice>
      )}
      {far.length === 0 ? null : (
        <Notice tone="caution" title="Far from the air the baseline was proven in.">
          <p>
            {far.map(({ condition }) => condition.name).join(', ')}: the main is a longer guess there. Read
            the plugs before you hold it wide open.
          </p>
        </Notice>
      )}
    </>
  );
}
