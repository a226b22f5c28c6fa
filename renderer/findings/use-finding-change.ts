import type { InputOf } from '../../shared-lib/contract/operations.ts';
import { useChange } from '../api/queries.ts';

export type FindingEdit = Omit<InputOf<'finding.change'>, 'id'>;

/** One field left, one step: every edit of the card is written at once. */
export function useFindingChange(findingId: string) {
  const change = useChange('finding.change');
  return {
    edit: (fields: FindingEdit) => change.run({ id: findingId, ...fields }),
    error: change.error,
    isRunning: change.isRunning,
  };
}
