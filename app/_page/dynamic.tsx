// Stands in for the framework's `next/dynamic` in the scripts of the pages (.scripts/page-scripts.mjs), as far as they use it.
import { type ComponentType, lazy, Suspense } from 'react';
import { OnlyAwake } from './only-awake';

type Options = {
  /** Every part that comes later is drawn in the browser only. */
  readonly ssr: false;
  readonly loading?: ComponentType;
};

/** A part of a page that comes later; `loading` stands there until then, in the HTML too. */
export default function dynamic<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
  { loading: Waiting }: Options,
): ComponentType<Props> {
  const Part = lazy(async () => ({ default: await load() })) as unknown as ComponentType<Props>;
  const Awake: ComponentType<Props> =
    typeof window === 'undefined'
      ? () => {
          throw new OnlyAwake();
        }
      : Part;
  // biome-ignore lint/correctness/noComponentHookFactories: called once for each part, where a module begins
  return function Dynamic(props) {
    return (
      <Suspense fallback={Waiting === undefined ? null : <Waiting />}>
        <Awake {...props} />
      </Suspense>
    );
  };
}
