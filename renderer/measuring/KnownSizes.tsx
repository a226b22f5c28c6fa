import { useEffect, useRef } from 'react';
import { Choice } from '../ui/Choice.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import styles from './ScalePane.module.css';
import type { ScaleDraft } from './scale-draft.ts';

interface KnownSizesProps {
  readonly draft: ScaleDraft;
  readonly setDraft: (next: (now: ScaleDraft) => ScaleDraft) => void;
  readonly unit: string;
}

type Size = 'length' | 'diameter' | 'wide' | 'high';

const firstSize: Readonly<Record<ScaleDraft['way'], Size>> = {
  'known-length': 'length',
  'known-circle': 'diameter',
  'known-points': 'wide',
};

/** All that the photo has to give is set, and the size is what lacks. A circle takes points for as long as one likes. */
function asksSizeNext(draft: ScaleDraft): boolean {
  const set = draft.points[draft.way].length;
  if (draft.way === 'known-length') return set === 2 && draft.length === '';
  return draft.way === 'known-points' && draft.known === 'rectangle' && set === 4 && draft.wide === '';
}

/** What is known of the reference: one size, or where its points lie. */
export function KnownSizes({ draft, setDraft, unit }: KnownSizesProps) {
  const first = useRef<HTMLInputElement & HTMLTextAreaElement>(null);
  const isNext = asksSizeNext(draft);
  useEffect(() => {
    const field = first.current;
    // Who is in the pane already, as with arrows among the ways, is not pulled on.
    if (isNext && field?.closest('aside')?.contains(document.activeElement) === false) field.focus();
  }, [isNext]);
  const field = (label: string, key: Size) => (
    <NumberField
      ref={key === firstSize[draft.way] ? first : undefined}
      label={label}
      unit={unit}
      value={draft[key]}
      onChange={(text) => setDraft((now) => ({ ...now, [key]: text }))}
      maxLength={40}
    />
  );
  if (draft.way === 'known-length') return field('How long it is', 'length');
  if (draft.way === 'known-circle') return field('How wide the circle is', 'diameter');
  return (
    <>
      <Choice
        label="The points are"
        value={draft.known}
        onChoose={(known) => setDraft((now) => ({ ...now, known }))}
        options={[
          { value: 'rectangle', words: 'corners of a rectangle' },
          { value: 'places', words: 'each at a place of its own' },
        ]}
        hint={
          draft.known === 'rectangle'
            ? 'Go round: from the first corner along the width, then along the height.'
            : 'Measured from any one corner: so far across, so far down.'
        }
      />
      {draft.known === 'rectangle' ? (
        <div className={styles.pair}>
          {field('Wide', 'wide')}
          {field('High', 'high')}
        </div>
      ) : (
        <Places draft={draft} setDraft={setDraft} unit={unit} />
      )}
    </>
  );
}

function Places({ draft, setDraft, unit }: KnownSizesProps) {
  const set = draft.points['known-points'];
  const write = (index: number, key: 'across' | 'down', text: string) =>
    setDraft((now) => {
      const places = now.points['known-points'].map((_point, k) => now.places[k] ?? { across: '', down: '' });
      const place = places[index];
      return place ? { ...now, places: places.with(index, { ...place, [key]: text }) } : now;
    });
  if (set.length === 0) return null;
  return (
    <ol className={styles.places}>
      {set.map((_point, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a point is known by its number alone
        <li key={index}>
          <span className={styles.number}>{index + 1}</span>
          <NumberField
            label={`Point ${index + 1} across`}
            unit={unit}
            value={draft.places[index]?.across ?? ''}
            onChange={(text) => write(index, 'across', text)}
            maxLength={40}
          />
          <NumberField
            label={`Point ${index + 1} down`}
            unit={unit}
            value={draft.places[index]?.down ?? ''}
            onChange={(text) => write(index, 'down', text)}
            maxLength={40}
          />
        </li>
      ))}
    </ol>
  );
}
