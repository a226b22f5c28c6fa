import type { FocusEvent, KeyboardEvent } from 'react';
import type { PreviousReading } from '../../shared-lib/contract/readings.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { InputProblem } from '../../shared-lib/sheets/read-fields.ts';
import { useAppState } from '../app/app-state.ts';
import { dayWords } from '../ui/words.ts';
import { SheetFieldRow } from './SheetFieldRow.tsx';
import styles from './SheetFields.module.css';
import type { SheetField } from './sheet-field.ts';
import type { SheetDraft } from './use-sheet-draft.ts';

interface SheetFieldsProps {
  readonly fields: readonly SheetField[];
  readonly draft: SheetDraft;
  readonly problems: readonly InputProblem[];
  readonly previous: PreviousReading | null;
  readonly record: VisitRecord;
  /** The field that has the focus; null for none. */
  readonly inHand: SheetField | null;
  readonly onInHand: (field: SheetField | null) => void;
}

const fieldControls =
  'input:not([type=radio]), textarea, input[type=radio]:checked, fieldset:not(:has(:checked)) input';

/** The next field down the sheet; a group of answers is one. */
function focusNext(from: HTMLElement): void {
  const form = from.closest('form');
  const all = [...(form?.querySelectorAll<HTMLElement>(fieldControls) ?? [])];
  const rowOf = (element: HTMLElement) => element.closest('[data-row]');
  const at = all.findIndex((element) => rowOf(element) === rowOf(from));
  const next = all.slice(at + 1).find((element) => rowOf(element) !== rowOf(from));
  if (next === undefined) from.blur();
  else next.focus();
}

/** What the sheet asks, in the order of the machine. Enter goes on to the next. */
export function SheetFields(props: SheetFieldsProps) {
  const { fields, draft, problems, previous, record, inHand, onInHand } = props;
  const { shop } = useAppState();
  const handleKeyDown = (event: KeyboardEvent<HTMLFormElement>) => {
    if (event.key !== 'Enter' || !(event.target instanceof HTMLElement)) return;
    const isTable = event.target instanceof HTMLTextAreaElement;
    if (isTable && !event.ctrlKey) return;
    if (event.target instanceof HTMLButtonElement) return;
    event.preventDefault();
    focusNext(event.target);
  };
  const fieldAround = (target: EventTarget | null): SheetField | null => {
    const row = target instanceof Element ? target.closest<HTMLElement>('[data-row]') : null;
    return fields.find((field) => row?.dataset.row === `${field.kept} ${field.id}`) ?? null;
  };
  const handleFocus = (event: FocusEvent) => onInHand(fieldAround(event.target));
  const handleBlur = (event: FocusEvent) => {
    const left = fieldAround(event.target);
    if (left === null || left === fieldAround(event.relatedTarget)) return;
    draft.commit(left);
    onInHand(null);
  };
  const row = (field: SheetField) => (
    <SheetFieldRow
      key={`${field.kept} ${field.id}`}
      field={field}
      draft={draft}
      problems={problems.filter(({ input }) => input === field.id)}
      before={previous?.reading[field.kept][field.id] ?? null}
      fromVisit={field.kept === 'conditions' ? (record.visit.conditions[field.id] ?? systemOf(field, record)) : null}
      system={shop.units}
      cylinders={record.layout.layout.engine.cylinders}
      isInHand={inHand?.id === field.id && inHand.kept === field.kept}
    />
  );
  const conditions = fields.filter(({ kept }) => kept === 'conditions');
  return (
    <form
      className={styles.form}
      onKeyDown={handleKeyDown}
      onFocus={handleFocus}
      onBlur={handleBlur}
      onSubmit={(event) => event.preventDefault()}
      aria-label="Readings"
    >
      {previous !== null && (
        <p className={styles.previous}>
          Greyed beside a field: {dayWords(previous.date)}
          {previous.isOfAnotherPart && ', of the part that was there before'}
        </p>
      )}
      {fields.filter(({ kept }) => kept === 'inputs').map(row)}
      {conditions.length > 0 && <h3 className={styles.heading}>Read under</h3>}
      {conditions.map(row)}
    </form>
  );
}

/** The machine says its own volts. */
const systemOf = ({ id }: SheetField, { layout }: VisitRecord): string | null =>
  id === 'system' ? `${layout.layout.volts} V` : null;
