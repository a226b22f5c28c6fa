import { type ComponentType, Suspense, useState } from 'react';
import { Waiting } from '../ui/Waiting.tsx';
import type { LaterCode } from './later-code.ts';

interface LaterPlaceProps<Props extends object> {
  readonly of: LaterCode<Props>;
  readonly with: Props;
}

/** A place whose code is no part of the first screen's. Once fetched it is drawn like any other, without a wait between. */
export function LaterPlace<Props extends object>({ of, with: props }: LaterPlaceProps<Props>) {
  // Kept as it was first drawn: another kind of element would begin the place anew.
  const [Drawn] = useState<ComponentType<Props>>(() => of.fetched() ?? of.Lazy);
  return (
    <Suspense fallback={<Waiting words="Opening ..." />}>
      <Drawn {...props} />
    </Suspense>
  );
}
