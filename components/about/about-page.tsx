import { Section } from '@/components/ui/section';
import { workedExample } from '@/lib/words/worked-example';
import styles from './about.module.css';
import { AirPart } from './air-part';
import { ExampleTable } from './example-table';
import { ForecastPart } from './forecast-part';
import { MixturePart } from './mixture-part';
import { PlanPart } from './plan-part';
import { Prose } from './prose';
import { WorthPart } from './worth-part';

/** The model in words and formulae, so that a doubter can check a number by hand. */
export function AboutPage() {
  return (
    <main className={styles.page}>
      <h1>How it works</h1>
      <p className={styles.lead}>
        A main jet proven right in one air is carried to another: air becomes density, density becomes the jet
        that keeps the mixture, and the doubt in forecast and engine becomes a risk of running lean. Here is
        every step, with its source, and one night worked through.
      </p>
      <AirPart />
      <MixturePart />
      <Example />
      <ForecastPart />
      <PlanPart />
      <WorthPart />
    </main>
  );
}

function Example() {
  const example = workedExample();
  const { baseline, night, main } = example.given;
  return (
    <Section title="One night by hand">
      <div className={styles.text}>
        <Prose>{`A ${main} flow-marked main was right at ${baseline.fahrenheit} °F, ${baseline.hectopascal} hPa station pressure and 80 % humidity. The night goes to −${Math.abs(night.fahrenheit)} °F and ${night.hectopascal} hPa station pressure. The numbers are computed by the code that plans.`}</Prose>
        <ExampleTable rows={example.rows} />
        <Prose>
          By the orifice law the need is {example.needPercent}: a {example.byNeed}. With the starting
          exponents of 0.65 it is {example.areaPercent}: a {example.byResponse}. Left alone, the {main} drifts
          to {example.driftPercent}, while the air alone would give {example.powerPercent} of power.
        </Prose>
      </div>
    </Section>
  );
}
