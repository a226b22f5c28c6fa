import type { ReactNode } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { fitWords } from '../../shared-lib/measuring/words.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { unitFor } from '../../shared-lib/quantities/show-quantity.ts';
import { wordsOf } from '../api/client.ts';
import { useAppState } from '../app/app-state.ts';
import { PlaceField } from '../findings/PlaceField.tsx';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Icon } from '../ui/Icon.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { TextField } from '../ui/TextField.tsx';
import { KnownSizes } from './KnownSizes.tsx';
import { PlaneList } from './PlaneList.tsx';
import styles from './ScalePane.module.css';
import { draftOfPlane, type ScaleWay } from './scale-draft.ts';
import type { Scale } from './use-scale.ts';

interface ScalePaneProps {
  readonly record: VisitRecord;
  readonly shot: Shot;
  readonly scale: Scale;
  readonly onWay: (way: ScaleWay) => void;
  /** The keys go to the photo, to set what the way in hand asks for. */
  readonly onToPhoto: () => void;
  readonly onStraight: (calibrationId: string) => void;
  readonly onClose: () => void;
  /** Other ways to set the points: a card found in the photo. */
  readonly offer?: ReactNode;
}

const ways: readonly { value: ScaleWay; words: string; note: string }[] = [
  { value: 'known-length', words: 'a known length', note: 'a rule, a width; seen square on' },
  { value: 'known-circle', words: 'a known circle', note: 'a bore, a washer; may lean' },
  { value: 'known-points', words: 'known points', note: 'four corners or more; any lean' },
];

const hints: Readonly<Record<ScaleWay, string>> = {
  'known-length': 'Pull from end to end of it on the photo, or tap both ends. The longer it is, the surer the scale.',
  'known-circle': 'Tap five or more points all round its rim.',
  'known-points': 'Tap them one after the other. A wrong one is picked and dragged, or deleted.',
};

/** The scale of the photo on the stage: what is known, where it lies, and how well it fits. */
export function ScalePane({ record, shot, scale, onWay, onToPhoto, onStraight, onClose, offer }: ScalePaneProps) {
  const { shop } = useAppState();
  const { draft, setDraft, fit, missing, refusal } = scale;
  const unit = unitFor('mm', shop.units);
  const planes = record.calibrations.filter(({ shotId }) => shotId === shot.id);
  return (
    <aside
      className={styles.pane}
      aria-label={`Scale of photo ${shot.sequence}`}
      onKeyDown={(event) => {
        if (event.defaultPrevented) return;
        if (event.key === 'Enter' && event.target instanceof HTMLInputElement && event.target.type === 'radio')
          onToPhoto();
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        onClose();
      }}
    >
      <header className={styles.head}>
        <h2>Scale of photo {shot.sequence}</h2>
        <button type="button" className={styles.close} onClick={onClose} aria-label="Close the scale">
          <Icon name="close" />
        </button>
      </header>
      <PlaneList planes={planes} onStraight={onStraight} onAgain={(plane) => setDraft(draftOfPlane(plane))} />
      {offer}
      <Choice
        label="In the photo there is"
        layout="column"
        value={draft.way}
        onChoose={onWay}
        options={ways}
        hint={hints[draft.way]}
      />
      <KnownSizes draft={draft} setDraft={setDraft} unit={unit} />
      <NumberField
        label="Its size can be off by"
        unit={unit}
        value={draft.tolerance}
        placeholder="0"
        onChange={(tolerance) => setDraft((now) => ({ ...now, tolerance }))}
        maxLength={40}
      />
      <TextField
        label="The face it lies in"
        value={scale.plane}
        placeholder="crown, deck, side of the tower"
        hint="Only what lies in this face is measured rightly."
        onChange={(plane) => setDraft((now) => ({ ...now, plane }))}
        maxLength={200}
      />
      <PlaceField
        label="Part of that face"
        layout={record.layout.layout}
        place={scale.component}
        onPlace={(component) => setDraft((now) => ({ ...now, component }))}
        wholePart
      />
      <section className={styles.fit} aria-label="How well it fits">
        {refusal !== null ? (
          <ErrorNote {...wordsOf(refusal)} />
        ) : missing !== null ? (
          <p className="soft" role="status">
            {missing}
          </p>
        ) : (
          fit !== null && <Fit scale={scale} fit={fit} />
        )}
        <div className={styles.row}>
          <Button
            look="primary"
            onPress={() => scale.keep(onClose)}
            disabled={missing !== null || fit === null || scale.isKeeping}
          >
            Keep this scale
          </Button>
          <Button look="link" onPress={scale.startOver}>
            Start over
          </Button>
        </div>
      </section>
    </aside>
  );
}

function Fit({ scale, fit }: { readonly scale: Scale; readonly fit: NonNullable<Scale['fit']> }) {
  const lean =
    fit.tiltDegrees === null ? '' : ` The face leans by about ${Math.round(fit.tiltDegrees)}° from the photo.`;
  return (
    <p role="status">
      <strong>{fit.pxPerMm.toFixed(1)} px per mm.</strong> {fitWords({ ...fit, way: scale.draft.way })}
      {lean}
    </p>
  );
}
