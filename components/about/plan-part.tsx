import { Section } from '@/components/ui/section';
import styles from './about.module.css';
import { Formula } from './formula';
import { Prose } from './prose';

/** Power and choice. */
export function PlanPart() {
  return (
    <Section title="Power and the choice">
      <div className={styles.text}>
        <Formula
          text="P / P_0 = (p_dry / p_dry,0) √(T_0 / T) · (1 − k drift²)"
          where="drift is how much richer than right the delivered mixture is; k = 2 on the rich side. Lean of the baseline, published curves differ by ten points, so lean counts as risk and never as power."
          source="the form shared by SAE J607 and the indicated part of SAE J1349 (from memory); k is an assumption you can change."
        />
        <Prose>
          <strong>The plan</strong> is made over 64 paths of weather and response, always the same ones for
          the same input; the risk of a lean run is graded on many more. First no run may be lean more often
          than the limit allows, then none too rich in over half of the paths, then power lost plus the price
          of a swap is as small as it can be. The choice is exact: it equals a search of all choices on small
          nights and a mixed-integer optimum on larger ones. A plan you accepted is kept unless another is
          clearly better.
        </Prose>
        <Prose>
          <strong>What it does not know:</strong> bad fuel, an air leak, a tired crank seal, ice in the
          carburettor, a jet that is not what its stamp says. It carries your baseline to other air; it cannot
          tell whether the baseline was right.
        </Prose>
      </div>
    </Section>
  );
}
