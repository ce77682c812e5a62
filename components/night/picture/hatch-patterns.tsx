import type { DriftState } from '@/lib/plan/types';

type Hatched = Exclude<DriftState, 'right'>;

export function hatchId(id: string, state: Hatched): string {
  return `${id}-${state}`;
}

/** Stripes that tell lean from rich without colour: lean falls to the left, rich to the right. */
export function HatchPatterns({ id }: { readonly id: string }) {
  return (
    <defs>
      <Hatch id={hatchId(id, 'lean')} colour="var(--lean)" angle={45} />
      <Hatch id={hatchId(id, 'rich')} colour="var(--rich)" angle={-45} />
    </defs>
  );
}

type HatchProps = { readonly id: string; readonly colour: string; readonly angle: number };

function Hatch({ id, colour, angle }: HatchProps) {
  return (
    <pattern id={id} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform={`rotate(${angle})`}>
      <rect width="7" height="7" fill="var(--paper)" />
      <rect width="4.5" height="7" fill={colour} />
    </pattern>
  );
}
