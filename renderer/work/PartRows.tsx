import { useState } from 'react';
import { Decimal } from '../../shared-lib/choices/records.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { FittedPart } from '../../shared-lib/model/machine.ts';
import { formatPath } from '../../shared-lib/parts/format-location.ts';
import { parseLocation } from '../../shared-lib/parts/parse-location.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';
import type { WorkItem } from '../../shared-lib/work/records.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { PlaceField } from '../findings/PlaceField.tsx';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { TextField } from '../ui/TextField.tsx';
import styles from './WorkPage.module.css';

const kinds = [
  { value: 'new', words: 'new' },
  { value: 'used', words: 'used' },
  { value: 'donor', words: 'from another machine' },
  { value: 'small', words: 'small parts, not on the machine’s list' },
] as const;
type Kind = (typeof kinds)[number]['value'];

const asDecimal = (text: string): string => text.trim().replace(',', '.');

/** Parts that went in. One with a place stands on the machine's list from now on: nothing is compared across its change. */
export function PartRows({ item, record }: { readonly item: WorkItem; readonly record: VisitRecord }) {
  const { layout } = record.layout;
  const place = record.findings.find(({ id }) => id === item.findingId)?.locations[0];
  const own = place === undefined ? null : formatPath(parseLocation(place).path);
  const add = useChange('work.addPart');
  const remove = useChange('work.removePart');
  const [isOpen, setOpen] = useState(false);
  const [words, setWords] = useState('');
  const [amount, setAmount] = useState('1');
  const [kind, setKind] = useState<Kind | null>(null);
  const [path, setPath] = useState<string | null>(own);
  const isNumber = Decimal.safeParse(asDecimal(amount)).success;
  const needsPlace = kind !== null && kind !== 'small';
  const isReady = words.trim() !== '' && isNumber && kind !== null && (!needsPlace || path !== null);
  const write = () =>
    add.run(
      {
        id: item.id,
        words,
        amount: asDecimal(amount),
        ...(needsPlace && path !== null ? { fit: { path, kind: kind satisfies FittedPart['kind'] } } : {}),
      },
      () => {
        setWords('');
        setAmount('1');
        setKind(null);
        setOpen(false);
      },
    );
  const error = add.error ?? remove.error;
  return (
    <section className={styles.part} aria-label="Parts that went in">
      <h3>Parts that went in</h3>
      <ul>
        {item.parts.map((part) => {
          const fitted = record.fittedParts?.find(({ id }) => id === part.fittedPartId);
          return (
            <li key={part.id} className={styles.proof}>
              <span>
                {part.amount !== '1' && `${part.amount} × `}
                {part.words}
                {fitted !== undefined && (
                  <span className="soft">
                    , {kinds.find(({ value }) => value === fitted.kind)?.words}, {speakComponent(fitted.path, layout)}
                  </span>
                )}
              </span>
              <Button
                look="link"
                label={`Take off ${part.words}`}
                onPress={() => remove.run({ id: item.id, partId: part.id })}
              >
                Take off
              </Button>
            </li>
          );
        })}
      </ul>
      {!isOpen && <Button onPress={() => setOpen(true)}>A part went in</Button>}
      {isOpen && (
        <div className={styles.form}>
          <div className={styles.pair}>
            <TextField label="What went in" value={words} onChange={setWords} maxLength={200} autoFocus />
            <NumberField
              label="How many"
              value={amount}
              onChange={setAmount}
              error={
                isNumber ? undefined : { happened: 'This is no number.', kept: 'What you typed still stands here.' }
              }
            />
          </div>
          <Choice label="It is" options={kinds} value={kind} onChoose={setKind} />
          {needsPlace && <PlaceField label="In the place of" layout={layout} place={path} onPlace={setPath} />}
          <div className={styles.row}>
            <Button onPress={write} disabled={!isReady || add.isRunning}>
              Write the part
            </Button>
            <Button look="link" onPress={() => setOpen(false)}>
              Leave it
            </Button>
          </div>
        </div>
      )}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </section>
  );
}
