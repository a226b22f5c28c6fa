import { useState } from 'react';
import type { Layout } from '../../shared-lib/model/layout.ts';
import { speakLocation } from '../../shared-lib/parts/speak-location.ts';
import { Button } from '../ui/Button.tsx';
import { useFocusBack } from '../ui/use-focus-back.ts';
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
  const back = useFocusBack();
  const close = () => {
    back.ask();
    setOpen(false);
  };
  if (isOpen) {
    return (
      <PlacePicker
        layout={layout}
        onPick={(path) => {
          close();
          if (path !== place) onPlace(path);
        }}
        onClose={close}
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
        ref={back.ref}
        look="link"
        onPress={() => setOpen(true)}
        label={place === null ? `Say the ${label.toLowerCase()}` : `Change the ${label.toLowerCase()}`}
      >
        {place === null ? 'Say where' : 'Change'}
      </Button>
    </div>
  );
}
