import { type ClipboardEvent, type FocusEvent, type KeyboardEvent, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import {
  type CellSpec,
  type Cells,
  cellsOf,
  pastedCells,
  textOfCells,
  withBlock,
  withCell,
} from '../../shared-lib/readings/cells.ts';
import { classNames } from '../ui/class-names.ts';
import styles from './CellGrid.module.css';
import { cellName, columnHeads, nextCell, type Place, sizeOf } from './cell-places.ts';

interface CellGridProps {
  readonly spec: CellSpec;
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly cylinders: number;
  /** Of the first cell. */
  readonly id: string;
  readonly describedBy: string;
  readonly isWrong: boolean;
}

/**
 * Several numbers, each in a cell of its own. Enter goes on along the cells and out of the last one; a list that is typed
 * into one cell, or pasted, spreads over as many as it needs.
 */
export function CellGrid({ spec, text, onType, cylinders, id, describedBy, isWrong }: CellGridProps) {
  // What stands in the cells while the hand is in them; anything else that changes the field is read anew.
  const [own, setOwn] = useState<{ readonly text: string; readonly cells: Cells } | null>(null);
  const cells = own !== null && own.text === text ? own.cells : cellsOf(text, spec);
  const grid = useRef<HTMLFieldSetElement>(null);
  const size = sizeOf(spec, cells, cylinders);
  const heads = columnHeads(spec, size.columns);

  const keep = (next: Cells) => {
    const typed = textOfCells(next, spec);
    setOwn({ text: typed, cells: next });
    onType(typed);
  };
  const focusOn = (place: Place) => {
    const cell = grid.current?.querySelector<HTMLInputElement>(`[data-cell="${place.row} ${place.column}"]`);
    cell?.focus();
    cell?.select();
  };
  const handlePaste = (event: ClipboardEvent<HTMLInputElement>, place: Place) => {
    const block = pastedCells(event.clipboardData.getData('text/plain'), spec);
    if (block === null) return;
    event.preventDefault();
    // Drawn at once: the next key may come before the browser would draw, and belongs into the next cell.
    flushSync(() => keep(withBlock(cells, place.row, place.column, block)));
    focusOn({ row: place.row + block.length - 1, column: place.column + (block.at(-1)?.length ?? 1) - 1 });
  };
  const handleKeyDown = (event: KeyboardEvent<HTMLInputElement>, place: Place) => {
    const { value, selectionStart, selectionEnd } = event.currentTarget;
    const isAt = (end: number) => selectionStart === end && selectionEnd === end;
    const move = (to: Place | null) => {
      if (to === null || to.row < 0 || to.column < 0 || to.row >= size.rows || to.column >= size.columns) return;
      event.preventDefault();
      focusOn(to);
    };
    const { row, column } = place;
    if (event.key === 'ArrowLeft' && isAt(0)) move({ row, column: column - 1 });
    if (event.key === 'ArrowRight' && isAt(value.length)) move({ row, column: column + 1 });
    if (event.key === 'ArrowUp') move({ row: row - 1, column });
    if (event.key === 'ArrowDown') move({ row: row + 1, column });
    if (event.key !== 'Enter' || event.ctrlKey) return;
    const several = cellsOf(value, spec).flat().length;
    if (several > 1) flushSync(() => setOwn(null));
    const next = nextCell({ spec, size, place, isEmpty: value.trim() === '', several });
    // Without a next cell the sheet itself goes on to its next field.
    if (next === null) return;
    event.preventDefault();
    event.stopPropagation();
    focusOn(next);
  };
  const handleBlur = (event: FocusEvent<HTMLFieldSetElement>) => {
    if (!event.currentTarget.contains(event.relatedTarget)) setOwn(null);
  };

  return (
    <fieldset
      ref={grid}
      className={classNames(styles.grid, spec.kind !== 'rows' && styles.list)}
      data-cells={spec.kind}
      aria-label={spec.label}
      aria-describedby={describedBy}
      onBlur={handleBlur}
    >
      {spec.kind === 'rows' ? (
        <div className={styles.rows} style={{ gridTemplateColumns: `repeat(${size.columns}, minmax(72px, 1fr))` }}>
          {heads.map((head) => (
            <span key={head} className={styles.head} aria-hidden="true">
              {head}
            </span>
          ))}
          {places(size).map(cell)}
        </div>
      ) : (
        places(size).map(cell)
      )}
    </fieldset>
  );

  function cell(place: Place) {
    const { row, column } = place;
    const isFirst = row === 0 && column === 0;
    return (
      <span key={`${row} ${column}`} className={styles.cell}>
        {spec.kind === 'per-cylinder' && (
          <span className={styles.which} aria-hidden="true">
            {column + 1}
          </span>
        )}
        <input
          id={isFirst ? id : undefined}
          type="text"
          inputMode="decimal"
          className={styles.number}
          data-cell={`${row} ${column}`}
          aria-label={cellName(spec, place)}
          aria-invalid={isWrong}
          value={cells[row]?.[column] ?? ''}
          onChange={(event) => keep(withCell(cells, row, column, event.target.value))}
          onPaste={(event) => handlePaste(event, place)}
          onKeyDown={(event) => handleKeyDown(event, place)}
          autoComplete="off"
          spellCheck={false}
        />
      </span>
    );
  }
}

function places({ rows, columns }: { readonly rows: number; readonly columns: number }): Place[] {
  return Array.from({ length: rows * columns }, (_, index) => ({
    row: Math.floor(index / columns),
    column: index % columns,
  }));
}
