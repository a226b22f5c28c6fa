import { checkBar } from '../../shared-lib/calibration/card/check-bar.ts';
import { wordsOf } from '../api/client.ts';
import { createStore, useStore } from '../api/store.ts';
import { openPanel } from '../app/panels.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import styles from './ScalePane.module.css';
import { millimetresOf } from './scale-draft.ts';
import type { Scale } from './use-scale.ts';

/** One sheet serves many photos: what its bar read stays typed for as long as the window is open. */
const barRead = createStore('');

/** A printed card in the photo: one press finds it and keeps it as the scale of the face it lies on. */
export function CardOffer({ scale }: { readonly scale: Scale }) {
  const typed = useStore(barRead);
  // The bar is marked in millimetres, whatever the shop measures in.
  const barMm = typed.trim() === '' ? null : millimetresOf(typed, 'metric');
  const isBelieved = typed.trim() === '' || (barMm !== null && barMm >= checkBar.least && barMm <= checkBar.most);
  const { card, cardRefusal, isFinding } = scale;
  return (
    <section className={styles.card} aria-label="Calibration card">
      <div className={styles.bar}>
        <NumberField
          label={`The ${checkBar.mm} mm bar reads`}
          unit="mm"
          value={typed}
          placeholder="not checked"
          error={isBelieved ? undefined : barWords}
          onChange={(text) => barRead.set(text)}
          maxLength={40}
        />
        {/* A button that is switched off would drop the focus, and Escape would not be heard. */}
        <Button onPress={() => isFinding || scale.isKeeping || scale.takeCard(barMm)} disabled={!isBelieved}>
          {isFinding ? 'Looking for the card ...' : 'Find the card'}
        </Button>
      </div>
      <p className="soft small">
        The bar on the card's sheet, by a steel rule; not checked, sizes can be 1 % off.{' '}
        <Button look="link" onPress={() => openPanel('cards')}>
          Print cards
        </Button>
      </p>
      {cardRefusal !== null && <ErrorNote {...wordsOf(cardRefusal)} />}
      {card !== null && (
        <p role="status">
          <strong>The {card.face} card is found and kept as the scale.</strong> Its {card.points.length} points fit to{' '}
          {card.rmsPx.toFixed(2)} px.{bendWords(card.bend)}
        </p>
      )}
    </section>
  );
}

const barWords = {
  happened: `Not a length between ${checkBar.least} and ${checkBar.most} mm: the sheet was printed to fit the page.`,
  kept: 'Print it again at 100 %, actual size.',
};

/** Less is within what a straightened photo has anyway. */
const worthSaying = 0.003;

function bendWords(bend: number): string {
  if (Math.abs(bend) < worthSaying) return '';
  return ` The lens shifts the photo's corners by ${(100 * Math.abs(bend)).toFixed(1)} %; that is taken out.`;
}
