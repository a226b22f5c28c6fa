import { useState } from 'react';
import type { Layout } from '../../shared-lib/model/layout.ts';
import { TextField } from '../ui/TextField.tsx';
import { readBank } from './usual-layout.ts';

interface MakersListProps {
  readonly layout: Layout;
  readonly onChange: (layout: Layout) => void;
}

/** The maker's own numbers, bank by bank, typed from the fan end to the flywheel. */
export function MakersList({ layout, onChange }: MakersListProps) {
  const { cylinders, arrangement } = layout.engine;
  const banks = arrangement === 'inline' ? ([undefined] as const) : (['R', 'L'] as const);
  const countOf = (index: number) =>
    banks.length === 1 ? cylinders : index === 0 ? Math.ceil(cylinders / 2) : Math.floor(cylinders / 2);
  const [typed, setTyped] = useState<readonly string[]>(() =>
    banks.map((bank) =>
      (layout.numbering.list ?? [])
        .filter((entry) => entry.bank === bank)
        .sort((a, b) => a.fromFreeEnd - b.fromFreeEnd)
        .map(({ number }) => number)
        .join(', '),
    ),
  );

  const setBank = (index: number, text: string) => {
    const next = typed.map((was, at) => (at === index ? text : was));
    setTyped(next);
    const read = banks.map((bank, at) => readBank(next[at] ?? '', countOf(at), bank));
    const entries = read.flatMap((bank) => bank ?? []);
    const isWhole =
      read.every((bank) => bank !== null) && new Set(entries.map(({ number }) => number)).size === cylinders;
    onChange({ ...layout, numbering: isWhole ? { scheme: 'list', list: entries } : { scheme: 'list' } });
  };

  return (
    <div style={{ display: 'grid', gap: 'var(--s4)', gridTemplateColumns: 'repeat(auto-fit, minmax(220px, 1fr))' }}>
      {banks.map((bank, index) => (
        <TextField
          key={bank ?? 'row'}
          label={
            bank === undefined
              ? 'Numbers from the fan end'
              : bank === 'R'
                ? 'Right bank, from the fan end'
                : 'Left bank, from the fan end'
          }
          hint={`${countOf(index)} numbers, such as ${Array.from({ length: countOf(index) }, (_, at) => at * banks.length + index + 1).join(', ')}. Left and right as seen from the flywheel.`}
          value={typed[index] ?? ''}
          onChange={(text) => setBank(index, text)}
          maxLength={80}
        />
      ))}
    </div>
  );
}
