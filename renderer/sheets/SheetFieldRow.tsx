import { useId } from 'react';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import { fieldUnit, namesUnit } from '../../shared-lib/readings/shop-unit.ts';
import type { InputProblem } from '../../shared-lib/sheets/read-fields.ts';
import { Choice } from '../ui/Choice.tsx';
import { classNames } from '../ui/class-names.ts';
import painted from '../ui/painted.module.css';
import { capital } from '../ui/words.ts';
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
          </label>
          <span className={styles.box} data-wide={spec.kind === 'number' ? undefined : ''}>
            {spec.kind === 'rows' ? (
              <textarea
                id={id}
                className={styles.table}
                rows={Math.min(8, Math.max(3, text.split('\n').length + 1))}
                value={text}
                onChange={(event) => draft.type(field, event.target.value)}
                aria-describedby={classNames(...described)}
                aria-invalid={named.some(({ weight }) => weight !== 'odd')}
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
                aria-invalid={named.some(({ weight }) => weight !== 'odd')}
                autoComplete="off"
                spellCheck={false}
              />
            )}
            {unit !== '' && !namesUnit(text === '' ? (fromVisit ?? '') : text) && (
              <span className={styles.unit}>{unit}</span>
            )}
          </span>
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
