import type { Disposition } from '../ranking/residual.ts';
import type { ScenarioChoice } from './shape.ts';

/** What a file's choice does to each finding, by the record's ids. */
export function dispositionsOf(
  choice: ScenarioChoice,
  findingIdOf: ReadonlyMap<string, string>,
): Record<string, Disposition> {
  return Object.fromEntries(
    Object.entries(choice.dispositions).flatMap(([id, disposition]) => {
      const recordId = findingIdOf.get(id);
      if (recordId === undefined) return [];
      if (typeof disposition === 'string') return [[recordId, { is: disposition }]];
      const { is, after } = disposition;
      if (after === undefined) return [[recordId, { is }]];
      const safety = after.safety === null ? ('none' as const) : after.safety;
      return [[recordId, { is, after: { ...after, safety } }]];
    }),
  );
}
