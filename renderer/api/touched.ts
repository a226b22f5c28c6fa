import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import type { OperationName } from '../../shared-lib/contract/operations.ts';

type Changed = Extract<RecorderEvent, { event: 'changed' }>;

/** How a kept answer is named: the operation, and what was asked. */
export type AnswerKey = readonly [name: OperationName, input: unknown];

function field(value: unknown, name: string): string | undefined {
  if (typeof value !== 'object' || value === null || !(name in value)) return undefined;
  const found: unknown = Reflect.get(value, name);
  return typeof found === 'string' ? found : undefined;
}

/**
 * Whether a change can have altered a kept answer. When in doubt it says yes: an answer asked for once too often costs a
 * few milliseconds, a stale one costs trust.
 */
export function isTouched(key: AnswerKey, answer: unknown, change: Changed): boolean {
  const [name, input] = key;
  const ofVisit = (id: string | undefined) => id !== undefined && change.visitIds.includes(id);
  const ofMachine = (id: string | undefined) => id !== undefined && change.machineIds.includes(id);
  const ofShop = change.records.some(({ type }) => type === 'shop' || type === 'person');

  switch (name) {
    case 'app.state':
      return ofShop || (change.visitIds.length === 0 && change.machineIds.length === 0);
    case 'machine.floor':
      return true;
    case 'machine.page':
      return ofMachine(field(input, 'id')) || change.visitIds.some((id) => holdsVisit(answer, id));
    case 'visit.get': {
      const machine = typeof answer === 'object' && answer !== null && 'machine' in answer ? answer.machine : undefined;
      return ofVisit(field(input, 'id')) || ofMachine(field(machine, 'id'));
    }
    case 'standing.get':
    case 'undo.state':
    case 'journal.of':
      return ofVisit(field(input, 'visitId')) || change.machineIds.length > 0;
    case 'report.preview':
      return ofVisit(field(input, 'visitId')) || change.machineIds.length > 0 || ofShop;
    case 'finding.lastUsed':
      return change.records.some(({ type }) => type === 'finding');
    case 'comparison.suggest':
      // What two photos have in common never changes.
      return false;
    default:
      return true;
  }
}

function holdsVisit(answer: unknown, visitId: string): boolean {
  if (typeof answer !== 'object' || answer === null || !('visits' in answer) || !Array.isArray(answer.visits)) {
    return true;
  }
  return answer.visits.some((entry: unknown) => {
    const visit = typeof entry === 'object' && entry !== null && 'visit' in entry ? entry.visit : undefined;
    return field(visit, 'id') === visitId;
  });
}
