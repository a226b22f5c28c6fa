import { useMemo, useState } from 'react';
import type { Defect } from '../../shared-lib/defects/defect.ts';
import { defectsForComponent } from '../../shared-lib/defects/defects-for-component.ts';
import { defectOf } from '../../shared-lib/defects/index.ts';
import { lastUsedFirst } from '../../shared-lib/defects/last-used-first.ts';
import { useAnswer } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { useFocusBack } from '../ui/use-focus-back.ts';
import styles from './FindingCard.module.css';
import { PickList, type PickOption } from './PickList.tsx';
import picker from './PlacePicker.module.css';
import type { SectionProps } from './section.ts';

/** What it is: the kinds that fit the part, last used first; all others behind, and by a word. */
export function WhatSection({ finding, edit }: SectionProps) {
  const defect = defectOf(finding.defect);
  const [isChanging, setChanging] = useState(false);
  // What was picked may be refused: until the record has a kind there is one to pick.
  const isOpen = isChanging || defect === null;
  const back = useFocusBack();
  const close = () => {
    back.ask();
    setChanging(false);
  };
  const choose = (chosen: Defect) => {
    close();
    if (chosen.id !== finding.defect) edit({ defect: chosen.id });
  };
  return (
    <section className={styles.section} aria-label="What it is">
      {!isOpen && (
        <div>
          <div className={styles.row}>
            <h3 className={styles.heading}>{defect.name}</h3>
            <Button
              ref={back.ref}
              look="link"
              onPress={() => setChanging(true)}
              label={`Change what it is, now ${defect.name}`}
            >
              Change
            </Button>
          </div>
          <p className={styles.small}>{defect.meaning}</p>
        </div>
      )}
      {isOpen && (
        <DefectPicker
          place={finding.locations[0] ?? null}
          onPick={choose}
          onClose={defect === null ? undefined : close}
        />
      )}
    </section>
  );
}

interface DefectPickerProps {
  readonly place: string | null;
  readonly onPick: (defect: Defect) => void;
  readonly onClose: (() => void) | undefined;
}

const fits = ({ name, meaning, id }: Defect, find: string): boolean =>
  find
    .toLowerCase()
    .split(/\s+/)
    .every((word) => `${name} ${meaning} ${id}`.toLowerCase().includes(word));

function DefectPicker({ place, onPick, onClose }: DefectPickerProps) {
  const [find, setFind] = useState('');
  const lastUsed = useAnswer('finding.lastUsed', {});
  const offered = useMemo(() => {
    const { fitting, others } = defectsForComponent(place);
    return [...lastUsedFirst(fitting, lastUsed.data?.defects ?? []), ...others];
  }, [place, lastUsed.data]);
  const shown = find.trim() === '' ? offered : offered.filter((defect) => fits(defect, find.trim()));
  const options = shown.map(
    (defect): PickOption => ({
      key: defect.id,
      words: (
        <>
          <strong>{defect.name}</strong> <span className={styles.small}>{defect.meaning}</span>
        </>
      ),
      onPress: () => onPick(defect),
    }),
  );
  return (
    <div className={picker.picker}>
      <PickList
        label="What is it?"
        placeholder="crack, scuffing, leak"
        typed={find}
        onType={setFind}
        maxLength={60}
        options={options}
        first={() => options[0]}
        none="No kind of that name. Your own words below say it too."
      />
      {onClose !== undefined && (
        <Button look="link" onPress={onClose}>
          Leave it
        </Button>
      )}
    </div>
  );
}
