import { Section } from '@/components/ui/section';
import styles from './about.module.css';
import { Formula } from './formula';
import { Prose } from './prose';

/** How temperature, pressure and humidity become a density. */
export function AirPart() {
  return (
    <Section title="Air">
      <div className={styles.text}>
        <Prose>
          Cold, high pressure and dryness put more oxygen into every litre the engine breathes. The density of
          moist air comes from the equation that laboratories use to weigh in air.
        </Prose>
        <Formula
          text="ρ = p M_a / (Z R T) · [1 − x_v (1 − M_v / M_a)]"
          where="p station pressure [Pa], T temperature [K], x_v mole fraction of water vapour, Z compressibility, M_a = 0.02896546 kg/mol, M_v = 0.01801528 kg/mol, R = 8.314472 J/(mol K). The dry part alone, which burns the fuel, is ρ_dry = p M_a / (Z R T) · (1 − x_v)."
          source="CIPM-2007, Picard et al., Metrologia 45 (2008) 149, equation 1. Stated for 15 to 27 °C; against the virial values of ASHRAE RP-1485 it is within 0.012 % at −60 °C."
        />
        <Formula
          text="x_v = f e / p,   e = RH · e_w(T)"
          where="e vapour pressure [Pa], e_w saturation pressure over liquid water [Pa] at all temperatures, f ≈ 1.004 the enhancement factor."
          source="CIPM-2007, equation A1.3; e_w below 0 °C by Murphy and Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539, equation 10."
        />
        <Prose>
          <strong>Which pressure?</strong> Only station pressure, what a barometer at the place shows, is the
          pressure the engine breathes. Weather reports give it reduced to sea level, airports as an altimeter
          setting. Both are turned back with the elevation. A sea-level number used as station pressure at
          1,600 m would make the air a fifth too thick, so it is refused and explained.
        </Prose>
        <Formula
          text="T = 288.15 − 0.0065 H,   p = 101325 (T / 288.15)^5.25588"
          where="H geopotential height [m]. An altimeter setting shifts this profile to where the place’s pressure lies; with no pressure at all it is used as it stands, and marked as an estimate."
          source="ISO 2533:1975, standard atmosphere."
        />
      </div>
    </Section>
  );
}
