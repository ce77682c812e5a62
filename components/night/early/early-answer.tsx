import { Plate } from '@/components/night/plate/plate';
import type { Acts } from '@/components/night/use-acts';
import type { Night } from '@/lib/night/night';
import type { Standing } from '@/lib/standing/standing';
import type { HourStyle } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import styles from '../night-page.module.css';
import early from './early-answer.module.css';

type EarlyAnswerProps = {
  readonly night: Night;
  readonly standing: Standing;
  readonly hours: HourStyle;
  readonly units: UnitChoice;
};

/** The first screen as it will stand once the page has woken up; until then no button of it can be pressed. */
export function EarlyAnswer({ night, standing, hours, units }: EarlyAnswerProps) {
  return (
    <main className={styles.page} aria-busy="true">
      <div className={styles.top}>
        <div className={styles.first}>
          <fieldset className={early.noPlaceOfItsOwn} disabled>
            <Plate {...{ night, standing, units }} acts={NO_ACTS} zone={{ zone: night.zone, hours }} />
          </fieldset>
        </div>
      </div>
    </main>
  );
}

const nothing = () => undefined;

const NO_ACTS: Acts = {
  accept: nothing,
  fit: nothing,
  runMade: nothing,
  moveRuns: nothing,
  startNow: nothing,
  addRun: nothing,
  knockOut: nothing,
  comeBack: nothing,
};
