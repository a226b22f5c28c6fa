import { useState } from 'react';
import type { TypedLimit } from '../../shared-lib/model/reading.ts';
import { unitFor } from '../../shared-lib/quantities/show-quantity.ts';
import type { UnitSystem } from '../../shared-lib/quantities/units.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { TextField } from '../ui/TextField.tsx';
import { capital } from '../ui/words.ts';
import styles from './LimitEditor.module.css';
import type { SheetPatch } from './use-sheet-draft.ts';

interface LimitEditorProps {
  readonly of: string;
  readonly unit: string;
  /** As typed for this reading; null where the sheet's own stands. */
  readonly limit: TypedLimit | null;
  readonly takenOver: string;
  /** The result itself may be typed: it is on somebody's paper, without what it came from. */
  readonly isTakenOver: boolean;
  readonly looks: boolean;
  readonly system: UnitSystem;
  readonly onSend: (patch: SheetPatch) => void;
  readonly onClose: () => void;
}

type Edge = 'min' | 'max' | 'badBelow' | 'badAbove';

const whose = [
  { value: 'maker', words: 'The maker’s' },
  { value: 'machine-shop', words: 'The machine shop’s' },
] as const;

/** Whose limit, from where to where, and on which page: it is kept for this machine. */
export function LimitEditor(props: LimitEditorProps) {
  const { of, unit, limit, takenOver, isTakenOver, looks, system, onSend, onClose } = props;
  const [edges, setEdges] = useState<Record<Edge, string>>({
    min: limit?.min ?? '',
    max: limit?.max ?? '',
    badBelow: limit?.badBelow ?? '',
    badAbove: limit?.badAbove ?? '',
  });
  const [source, setSource] = useState<TypedLimit['source']>(limit?.source ?? 'maker');
  const [page, setPage] = useState(limit?.page ?? '');
  const [result, setResult] = useState(takenOver);
  const shopUnit = unitFor(unit, system);
  const inUnit = (text: string) =>
    /[\p{L}°%]/u.test(text) || shopUnit === unit ? text.trim() : `${text.trim()} ${shopUnit}`;
  const given = Object.entries(edges).filter(([, text]) => text.trim() !== '');
  const keep = () => {
    const typed = Object.fromEntries(given.map(([edge, text]) => [edge, inUnit(text)]));
    const next: TypedLimit = { ...typed, source, ...(page.trim() === '' ? {} : { page: page.trim() }) };
    onSend({
      ...(given.length === 0 ? {} : { limits: { [of]: next } }),
      ...(result.trim() === takenOver ? {} : { takenOver: { [of]: inUnit(result) } }),
    });
  };
  const field = (edge: Edge, label: string) => (
    <NumberField
      label={label}
      value={edges[edge]}
      unit={shopUnit}
      onChange={(text) => setEdges((before) => ({ ...before, [edge]: text }))}
    />
  );
  return (
    <form
      className={styles.editor}
      aria-label={`Limit of ${of}`}
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        onClose();
      }}
    >
      {!looks && (
        <>
          <Choice
            label={`${capital(of)}: whose limit`}
            options={whose}
            value={source === 'maker' || source === 'machine-shop' ? source : null}
            onChoose={setSource}
          />
          <div className={styles.edges}>
            {field('min', 'At least')}
            {field('max', 'At most')}
            <TextField label="Page or paper" value={page} onChange={setPage} maxLength={200} />
          </div>
          <details className={styles.more}>
            <summary>It has a middle zone</summary>
            <div className={styles.edges}>
              {field('badBelow', 'Beyond below')}
              {field('badAbove', 'Beyond above')}
            </div>
          </details>
        </>
      )}
      {isTakenOver && (
        <TextField
          label="The result itself, from somebody’s paper"
          value={result}
          onChange={setResult}
          hint={looks ? 'shown, or not found by this test' : 'It stands as typed; the sheet does not compute it.'}
        />
      )}
      <div className={styles.actions}>
        <Button type="submit" disabled={given.length === 0 && result.trim() === takenOver}>
          Hold it against this
        </Button>
        {limit !== null && (
          <Button look="link" onPress={() => onSend({ limits: { [of]: null } })}>
            Back to common practice
          </Button>
        )}
        <Button look="link" onPress={onClose}>
          Leave it
        </Button>
      </div>
      <p className="soft small">Kept for this machine, and held against the next reading too.</p>
    </form>
  );
}
