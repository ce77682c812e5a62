// What the charts ask of d3-scale: a straight line from numbers to pixels, and places one after the other. next.config.ts
// puts it in that package's place: recharts takes scales by their names and so brings all of them, with colours, dates
// and number formats, 18 kB.
const kept = (scale, read, write) => (values) => {
  if (values === undefined) return [...read()];
  write(values);
  return scale;
};

export function scaleLinear() {
  let domain = [0, 1];
  let range = [0, 1];
  const scale = (value) => {
    const [from, to] = domain;
    const [start, end] = range;
    // Half way where the domain is one number, as in d3.
    const share = from === to ? 0.5 : (Number(value) - from) / (to - from);
    return Number.isNaN(share) ? undefined : start + share * (end - start);
  };
  scale.domain = kept(
    scale,
    () => domain,
    (values) => {
      domain = Array.from(values, Number);
    },
  );
  scale.range = kept(
    scale,
    () => range,
    (values) => {
      range = Array.from(values, Number);
    },
  );
  scale.invert = (pixel) => {
    const [start, end] = range;
    const [from, to] = domain;
    return from + (start === end ? 0.5 : (pixel - start) / (end - start)) * (to - from);
  };
  scale.copy = () => scaleLinear().domain(domain).range(range);
  return scale;
}

/** Evenly from end to end, one after the other: what recharts starts from until its axes are known. */
export function scalePoint() {
  let domain = [];
  let range = [0, 1];
  const scale = (value) => {
    const index = domain.indexOf(value);
    const [start, end] = range;
    if (index < 0) return undefined;
    return domain.length === 1 ? (start + end) / 2 : start + ((end - start) * index) / (domain.length - 1);
  };
  scale.domain = kept(
    scale,
    () => domain,
    (values) => {
      domain = [...new Set(values)];
    },
  );
  scale.range = kept(
    scale,
    () => range,
    (values) => {
      range = Array.from(values, Number);
    },
  );
  scale.bandwidth = () => 0;
  scale.copy = () => scalePoint().domain(domain).range(range);
  return scale;
}
