import { Section } from '@/components/ui/section';
import styles from './about.module.css';
import { Formula } from './formula';
import { Prose } from './prose';
import { Symbols } from './symbols';

/** From density to jet. */
export function MixturePart() {
  return (
    <Section title="Mixture">
      <div className={styles.text}>
        <p>
          <Symbols text="Air rushing through the venturi at speed v lowers the pressure there by ½ ρ v². That depression lifts fuel through the jet: a hole of area A passes fuel in proportion to A √(2 ρ_f · ½ ρ v²), so to A √ρ. What must be burned goes with ρ_dry itself. Thicker air therefore brings more oxygen than it lifts fuel, and a jet left alone runs lean." />
        </p>
        <Formula
          text="need = A / A_0 = (ρ_dry / ρ_dry,0) / √(ρ / ρ_0)"
          where="Index 0 is the air the baseline was proven in, at the carburettor. Cold fuel is denser but also more viscous, which takes about as much back in a small jet, so fuel density is held unless you switch it on."
          source="Heywood, Internal Combustion Engine Fundamentals, section 7.2, elementary carburettor. Two textbook examples of an engine taken to 4,500 m and 5,000 m are among the tests."
        />
        <Prose>
          A main jet works in series with the gap around the needle and beside the pilot, and real charts move
          mains more than that law, most of all with altitude. So pressure and temperature carry exponents of
          their own.
        </Prose>
        <Formula
          text="ln(A / A_0) = ln need + (n_p − ½) ln(p / p_0) + (n_T − ½) ln(T_0 / T)"
          where="(½, ½) is the law above, (1, 1) is area in proportion to density: the two ends of trade practice. Until your own chart or log says otherwise each is 0.65 give or take 0.12."
          source="form ours; the starting numbers are a judgement between the two ends, no source. Your chart and log change them by Bayesian linear regression (Bishop, Pattern Recognition and Machine Learning, 2006, equations 3.50 and 3.51)."
        />
        <Prose>
          A number stamped on a jet is proportional to area where jets are flow-marked; where they are
          bore-marked it is a diameter, so area goes with its square. Pilot and needle follow the need alone.
          How many turns make one pilot size (about 1¼) is common practice, no source.
        </Prose>
      </div>
    </Section>
  );
}
