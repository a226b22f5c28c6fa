import type { CheckedInputOf } from '../../../shared-lib/contract/operations.ts';
import type { Quantity } from '../../../shared-lib/model/quantity.ts';
import { quantityKind } from '../../../shared-lib/quantities/dictionary.ts';
import { readQuantity } from '../../../shared-lib/quantities/read-quantity.ts';
import { unitFor } from '../../../shared-lib/quantities/show-quantity.ts';
import type { UnitSystem } from '../../../shared-lib/quantities/units.ts';
import type { Tables } from '../database/tables.ts';
import type { Columns } from '../journal/record-writer.ts';
import type { Typed } from './quantities-from-marks.ts';

type Input = Omit<CheckedInputOf<'finding.change'>, 'id' | 'quantities'> & { readonly quantities?: Typed | undefined };
type Row = Tables['finding'];

/** Typed quantities read into numbers and merged over those there; null takes one away. A bare number is in the shop's units. Text that is no number is kept as typed. */
export const mergeQuantities = (
  there: Readonly<Record<string, Quantity>>,
  typed: NonNullable<Input['quantities']>,
  units: UnitSystem,
): Record<string, Quantity> => {
  const merged: Record<string, Quantity> = { ...there };
  for (const [id, quantity] of Object.entries(typed)) {
    if (quantity === null) delete merged[id];
    else {
      const kind = quantityKind(id);
      const read = readQuantity(quantity.typed, unitFor(kind?.unit ?? '', units), quantity.origin, kind);
      merged[id] = quantity.how === undefined ? read : { ...read, how: quantity.how };
    }
  }
  return merged;
};

const safetyColumns = (
  safety: NonNullable<Input['safety']> | null,
): Pick<Row, 'safety_judged' | 'severity' | 'probability'> => {
  if (safety === null) return { safety_judged: 0, severity: null, probability: null };
  if (safety === 'none') return { safety_judged: 1, severity: null, probability: null };
  return { safety_judged: 1, severity: safety.severity, probability: safety.probability };
};

const flagOf = (value: boolean | undefined): 0 | 1 | undefined => (value === undefined ? undefined : value ? 1 : 0);

/** The columns that an input names. Locations live in their own table. */
export const findingColumns = (
  input: Input,
  before: { readonly quantities: Readonly<Record<string, Quantity>> },
  units: UnitSystem,
): Columns<'finding'> => ({
  kind: input.kind,
  defect: input.defect,
  words: input.words,
  state: input.state,
  methods: input.methods && JSON.stringify([...new Set(input.methods)]),
  quantities: input.quantities && JSON.stringify(mergeQuantities(before.quantities, input.quantities, units)),
  ...(input.safety === undefined ? {} : safetyColumns(input.safety)),
  urgency: input.urgency,
  run_worse: input.runWorse === null ? null : flagOf(input.runWorse),
  damage_class: input.damageClass,
  facts: input.facts && JSON.stringify([...new Set(input.facts)]),
  not_examined_because: input.notExaminedBecause,
  named_condition_declined_because: input.namedConditionDeclinedBecause,
  if_left: input.ifLeft,
  watch_for: input.watchFor,
  action: input.action,
  action_words: input.actionWords,
  do_not_operate: flagOf(input.doNotOperate),
  do_not_run: flagOf(input.doNotRun),
  loop_start: flagOf(input.loopStart),
  found_on: input.foundOn,
  noticed_on: input.noticedOn,
  absent_on: input.absentOn,
});

/** A finding of which nothing is said yet: suspected, until a method and a proof confirm it. */
export const emptyFinding = (id: string, visitId: string, number: number, createdAtMs: number): Row => ({
  id,
  visit_id: visitId,
  number,
  kind: 'condition',
  defect: null,
  words: '',
  state: 'suspected',
  methods: '[]',
  quantities: '{}',
  safety_judged: 0,
  severity: null,
  probability: null,
  urgency: null,
  run_worse: null,
  damage_class: null,
  facts: '[]',
  not_examined_because: null,
  named_condition_declined_because: null,
  if_left: '',
  watch_for: '',
  action: null,
  action_words: '',
  do_not_operate: 0,
  do_not_run: 0,
  loop_start: 0,
  found_on: null,
  noticed_on: null,
  absent_on: null,
  track_of: null,
  supersedes: null,
  superseded_because: null,
  moved_before: null,
  moved_reason: null,
  created_at_ms: createdAtMs,
  binned: 0,
});
