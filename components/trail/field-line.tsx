import type { ReactNode } from 'react';

type FieldLineProps = {
  readonly name: string;
  readonly className: string | undefined;
  readonly children: ReactNode;
};

/** One of several rows of like fields; its name tells by ear which of them a field is of. */
export function FieldLine({ name, className, children }: FieldLineProps) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a legend would take a line of its own
    <div role="group" aria-label={name} className={className}>
      {children}
    </div>
  );
}
