import { Section } from '@/components/ui/section';
import styles from './about.module.css';
import { Formula } from './formula';
import { Prose } from './prose';

/** How wrong forecasts are, what that was measured on, and what it was not. */
export function ForecastPart() {
  return (
    <Section title="How wrong forecasts are">
      <div className={styles.text}>
        <Formula
          text="σ² = g² (3.8 + 0.235 · max(0, −5 − T)) K²"
          where="σ standard deviation of the night’s temperature, T the temperature that is forecast [°C], g = 0.96, 1, 1.05, 1.10 at 12, 24, 36, 48 hours ahead, 1.8 at six days, then towards 6 K: the season."
          source="fitted here to about 6,600 nights for each lead at 45 airports of 18 cold US states, official forecasts, February 2021 to January 2022; beyond two days to the daily highs of 40 of those cities, five winters to 2017."
        />
        <Prose>
          <strong>The colder the forecast, the wider it misses</strong>: 1.9 K at 0 °C, 2.5 K at −15 °C, 2.9 K
          at −25 °C, a day ahead. On average official forecasts of cold nights were right (−0.1 ± 0.1 K).
        </Prose>
        <Prose>
          <strong>An error lasts.</strong> A fifth of it (22 %) stays all night; half of all of it is still
          there after six hours. That is the shape found at 709 Nordic stations in four runs of a 2.5 km
          model, on one February day. A reading at the track corrects the hours after it exactly as Gaussian
          statistics say.
        </Prose>
        <Prose>
          <strong>A raw weather model</strong> (no station has corrected it) is taken as 1.2 times as wide
          below −5 °C, and as up to 1 K too warm on a clear calm night over snow. Measured: +0.6 K at Nordic
          stations under a clear model sky, +1 K at 210 US airports in a published study. On half of such
          nights there is no such error, on a few it is 7 K, so another 1.7 K of spread is counted on, which
          stays all night: 3.2 K in all, as measured. Read a thermometer then.
        </Prose>
        <Prose>
          <strong>Hours of which nobody says who made them</strong>, such as typed ones, may be a raw model’s
          under any sky. Nothing is moved, but on cold nights 3.5 K of spread is added, since one such night
          in twenty came 7.6 K colder than the model said (Nordic stations, below −10 °C). It costs a swap in
          fifteen nights; a reading before each run takes all of that back.
        </Prose>
        <Prose>
          <strong>An ensemble</strong> is too narrow near the ground: 1.3 K are added on plains (Magdeburg), 3
          K among mountains (Innsbruck, Pacific Northwest). Which of the two a place is goes by its height,
          from 300 to 600 m, and by how far it stands from the model’s own ground. That is a judgement.
        </Prose>
        <Prose>
          <strong>A place of its own.</strong> Places were measured to lie 0.4 K apart in their mean error
          with official forecasts and 1.0 K with a raw model. So what past nights at a place taught is counted
          on only in part: of 2 K on five nights, about 0.4 K and 1.3 K. How it goes with the hour after
          sunset is a judgement.
        </Prose>
        <Prose>
          <strong>Not measured:</strong> tracks in hollows and on lakes, which run colder than any airport;
          ensembles in deep cold; errors under six hours ahead; pressure beyond two days. There the numbers
          are judgements, on the rich side.
        </Prose>
      </div>
    </Section>
  );
}
