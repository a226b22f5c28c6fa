import { useState } from 'react';
import { matesOf } from '../../shared-lib/parts/mates-of.ts';
import { speakLocation } from '../../shared-lib/parts/speak-location.ts';
import { useChange } from '../api/queries.ts';
import { FindingDiagrams } from '../diagrams/FindingDiagrams.tsx';
import { Button } from '../ui/Button.tsx';
import styles from './FindingCard.module.css';
import { PlaceDetails } from './PlaceDetails.tsx';
import { PlaceField } from './PlaceField.tsx';
import { PlacePicker } from './PlacePicker.tsx';
import type { SectionProps } from './section.ts';

/** Where it is: one place or several, how far down and which way, and what touches it. */
export function WhereSection({ record, finding, edit }: SectionProps) {
  const { layout } = record.layout;
  const [isAdding, setAdding] = useState(false);
  const [first = null, ...others] = finding.locations;
  const withPlace = (index: number, place: string) =>
    edit({ locations: finding.locations.map((old, at) => (at === index ? place : old)) });
  return (
    <section className={styles.section} aria-label="Where" style={{ borderTop: 0, paddingTop: 0 }}>
      <PlaceField
        label="Where"
        layout={layout}
        place={first}
        onPlace={(place) => edit({ locations: [place, ...others] })}
      />
      <FindingDiagrams
        record={record}
        finding={finding}
        onPick={(path) => edit({ locations: [path, ...others.filter((other) => other !== path)] })}
      />
      {first !== null && <PlaceDetails place={first} onPlace={(place) => withPlace(0, place)} />}
      {others.map((place, index) => (
        <div key={place} className={styles.row}>
          <span>and {speakLocation(place, layout)}</span>
          <Button
            look="link"
            onPress={() => edit({ locations: finding.locations.filter((_, at) => at !== index + 1) })}
          >
            Not there
          </Button>
        </div>
      ))}
      {first !== null &&
        (isAdding ? (
          <PlacePicker
            layout={layout}
            onPick={(place) => {
              setAdding(false);
              if (!finding.locations.includes(place)) edit({ locations: [...finding.locations, place] });
            }}
            onClose={() => setAdding(false)}
          />
        ) : (
          <Button look="link" onPress={() => setAdding(true)}>
            It is in another place too
          </Button>
        ))}
      {first !== null && finding.kind === 'condition' && <Mates record={record} finding={finding} place={first} />}
    </section>
  );
}

/** What touches this part, or shares its gasket: a reminder to look, with a finding begun there by one tap. */
function Mates({ record, finding, place }: Pick<SectionProps, 'record' | 'finding'> & { readonly place: string }) {
  const add = useChange('finding.add');
  const { layout } = record.layout;
  const taken = new Set(record.findings.flatMap(({ locations, binned }) => (binned ? [] : locations)));
  const mates = matesOf(place, layout).filter(({ location }) => !taken.has(location));
  if (mates.length === 0) return null;
  return (
    <details>
      <summary className={styles.heading}>Look at what touches it ({mates.length})</summary>
      <ul className={styles.list}>
        {mates.map(({ location, why }) => (
          <li key={location}>
            <span>
              {speakLocation(location, layout)}
              <span className={styles.small}> {why}</span>
            </span>
            <Button
              look="link"
              disabled={add.isRunning}
              onPress={() => add.run({ visitId: finding.visitId, locations: [location], state: 'suspected' })}
            >
              Begin a finding
            </Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
