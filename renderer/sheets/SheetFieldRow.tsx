import { useId, useMemo } from 'react';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import { cellsOf } from '../../shared-lib/readings/cells.ts';
import { fieldUnit, namesUnit } from '../../shared-lib/readings/shop-unit.ts';
import type { InputProblem } from '../../shared-lib/sheets/read-fields.ts';
import { Choice } from '../ui/Choice.tsx';
import { classNames } from '../ui/class-names.ts';
import painted from '../ui/painted.module.css';
import { capital } from '../ui/words.ts';
import { CellGrid } from './CellGrid.tsx';
import { mostCells } from './cell-places.ts';
import { rangeWords, tallyWords } from './field-words.ts';
import styles from './SheetFieldRow.module.css';
import type { SheetField } from './sheet-field.ts';
import type { SheetDraft } from './use-sheet-draft.ts';

interface SheetFieldRowProps {
  readonly field: SheetField;
  readonly draft: SheetDraft;
  readonly problems: readonly InputProblem[];
  /** As typed in the visit before. */
  readonly before: string | null;
  /** What the visit or the machine says where the field is left empty. */
  readonly fromVisit: string | null;
  readonly system: UnitSystem;
  readonly cylinders: number;
  readonly isInHand: boolean;
}

/** One field: what is asked, the number, its unit, what it was before; the one in hand is painted. */
export function SheetFieldRow(props: SheetFieldRowProps) {
  const { field, draft, problems, before, fromVisit, system, cylinders, isInHand } = props;
  const { spec } = field;
  const id = useId();
  const text = draft.textOf(field);
  // Half a number is not a wrong one: only what cannot be is named while it is still being typed.
  const named = problems.filter(({ weight }) => !isInHand || draft.isKept(field) || weight === 'impossible');
  const words = rangeWords(spec, system);
  const tally = tallyWords(spec, text, cylinders);
  const unit = fieldUnit(spec, system);
  const isSeveral = spec.kind === 'list' || spec.kind === 'per-cylinder' || spec.kind === 'rows';
  const isLong = useMemo(
    () => isSeveral && text.length > mostCells && cellsOf(text, spec).flat().length > mostCells,
    [isSeveral, spec, text],
  );
  const isCells = isSeveral && !isLong;
  const isWrong = named.some(({ weight }) => weight !== 'odd');
  const described = [`${id}-range`, named.length > 0 && `${id}-problem`];
  return (
    <div
      data-row={`${field.kept} ${field.id}`}
      className={classNames(styles.row, isInHand && painted.painted, isInHand && styles.inHand)}
    >
      {spec.kind === 'choice' ? (
        <div className={styles.choice}>
          <Choice
            label={spec.label}
            options={spec.answers.map((answer) => ({ value: answer, words: capital(answer) }))}
            value={spec.answers.find((answer) => answer.toLowerCase() === text.toLowerCase()) ?? null}
            onChoose={(answer) => draft.commit(field, answer)}
          />
        </div>
      ) : (
        <>
          <label className={styles.label} htmlFor={id}>
            {spec.label}
            {isCells && unit !== '' && <span className={styles.unit}>{unit}</span>}
          </label>
          {isCells ? (
            <span className={styles.cells}>
              <CellGrid
                spec={spec}
                text={text}
                onType={(typed) => draft.type(field, typed)}
                cylinders={cylinders}
                id={id}
                describedBy={classNames(...described)}
                isWrong={isWrong}
              />
            </span>
          ) : (
            <span className={styles.box} data-wide={isLong ? '' : undefined}>
              {isLong ? (
                <textarea
                  id={id}
                  className={styles.table}
                  rows={8}
                  value={text}
                  onChange={(event) => draft.type(field, event.target.value)}
                  aria-describedby={classNames(...described)}
                  aria-invalid={isWrong}
                  spellCheck={false}
                />
              ) : (
                <input
                  id={id}
                  type="text"
                  inputMode={spec.kind === 'text' ? 'text' : 'decimal'}
                  className={spec.kind === 'text' ? styles.text : styles.number}
                  value={text}
                  onChange={(event) => draft.type(field, event.target.value)}
                  placeholder={fromVisit ?? undefined}
                  aria-describedby={classNames(...described)}
                  aria-invalid={isWrong}
                  autoComplete="off"
                  spellCheck={false}
                />
              )}
              {unit !== '' && !namesUnit(text === '' ? (fromVisit ?? '') : text) && (
                <span className={styles.unit}>{unit}</span>
              )}
            </span>
          )}
        </>
      )}
      <p className={styles.range} id={`${id}-range`}>
        <span>{words}</span>
        {before !== null && <span className={styles.before}>last visit {before.replaceAll('\n', '; ')}</span>}
      </p>
      {tally !== '' && <p className={styles.tally}>{tally}</p>}
      {named.length > 0 && (
        <div className={styles.problem} id={`${id}-problem`} role="status">
          {named.map(({ what, weight }) => (
            <p key={what}>
              <strong>{what}</strong> {weight === 'odd' ? 'It is kept and counted.' : 'Kept as typed, not counted.'}
            </p>
          ))}
        </div>
      )}
    </div>
  );
}
