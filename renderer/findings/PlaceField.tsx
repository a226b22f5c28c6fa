import { useState } from 'react';
import type { Layout } from '../../shared-lib/model/layout.ts';
import { speakLocation } from '../../shared-lib/parts/speak-location.ts';
import { Button } from '../ui/Button.tsx';
import styles from './PlaceField.module.css';
import { PlacePicker } from './PlacePicker.tsx';

interface PlaceFieldProps {
  readonly label: string;
  readonly layout: Layout;
  /** A place of the grammar; null while nobody has said where. */
  readonly place: string | null;
  readonly onPlace: (place: string) => void;
  readonly wholePart?: boolean | undefined;
}

/** A place in words, and the way to another. */
export function PlaceField({ label, layout, place, onPlace }: PlaceFieldProps) {
  const [isOpen, setOpen] = useState(false);
  if (isOpen) {
    return (
      <PlacePicker
        layout={layout}
        onPick={(path) => {
          setOpen(false);
          if (path !== place) onPlace(path);
        }}
        onClose={() => setOpen(false)}
      />
    );
  }
  return (
    <div className={styles.field}>
      <span className={styles.label}>{label}</span>
      <span className={styles.place}>
        {place === null ? <span className="soft">not said yet</span> : speakLocation(place, layout, { long: true })}
      </span>
      <Button
        look="link"
        onPress={() => setOpen(true)}
        label={place === null ? `Say the ${label.toLowerCase()}` : `Change the ${label.toLowerCase()}`}
      >
        {place === null ? 'Say where' : 'Change'}
      </Button>
    </div>
  );
}
