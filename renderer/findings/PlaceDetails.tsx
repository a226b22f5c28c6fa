import { boreSides, detailsAsked } from '../../shared-lib/parts/details-asked.ts';
import { faceClock } from '../../shared-lib/parts/face-clock.ts';
import { formatLocation } from '../../shared-lib/parts/format-location.ts';
import type { Qualifiers } from '../../shared-lib/parts/location.ts';
import { parseLocation } from '../../shared-lib/parts/parse-location.ts';
import { capitalise } from '../../shared-lib/parts/speak-component.ts';
import { sideWords } from '../../shared-lib/parts/speak-location.ts';
import { Choice } from '../ui/Choice.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import styles from './PlaceDetails.module.css';
import { clockOf, depthOf, rangeText } from './place-details.ts';

interface PlaceDetailsProps {
  readonly place: string;
  readonly onPlace: (place: string) => void;
}

type QualifierChange = { readonly [K in keyof Qualifiers]?: Qualifiers[K] | undefined };

const withQualifiers = (place: string, change: QualifierChange): string => {
  const location = parseLocation(place);
  const entries = Object.entries({ ...location.qualifiers, ...change }).filter(([, value]) => value !== undefined);
  return formatLocation({ ...location, qualifiers: Object.fromEntries(entries) as Qualifiers });
};

/** Which way and how far on the part: clock, side, depth, end. Only what makes sense there is asked. */
export function PlaceDetails({ place, onPlace }: PlaceDetailsProps) {
  const location = parseLocation(place);
  const asked = detailsAsked(location);
  if (asked.length === 0) return null;
  const { clock, depth, end, side } = location.qualifiers;
  const set = (change: QualifierChange) => onPlace(withQualifiers(place, change));
  return (
    <div className={styles.details}>
      {asked.includes('end') && (
        <Choice
          label="End"
          value={end ?? null}
          onChoose={(chosen) => set({ end: chosen })}
          options={[
            { value: 'A', words: 'pump end' },
            { value: 'B', words: 'actuator end' },
          ]}
        />
      )}
      {asked.includes('clock') && (
        <NumberField
          label="O’clock, from above"
          value={clock === undefined ? '' : rangeText(clock.fromHour, clock.toHour)}
          onCommit={(typed) => {
            const read = clockOf(typed);
            if (read !== null || typed.trim() === '') set({ clock: read ?? undefined });
          }}
          hint={
            clock === undefined
              ? '12 is the fan end; half hours too.'
              : `Seen from below it is ${faceClock(clock.fromHour)}: left and right swap.`
          }
          maxLength={9}
        />
      )}
      {asked.includes('depth') && (
        <NumberField
          label={asked.includes('end') ? 'From that end' : 'How far down'}
          unit="mm"
          value={depth === undefined ? '' : rangeText(depth.fromMm, depth.toMm)}
          onCommit={(typed) => {
            const read = depthOf(typed);
            if (read !== null || typed.trim() === '') set({ depth: read ?? undefined });
          }}
          hint="One number, or from-to."
          maxLength={15}
        />
      )}
      {asked.includes('side') && (
        <Choice
          label="Side"
          value={side ?? null}
          onChoose={(chosen) => set({ side: chosen })}
          options={[...new Set([...boreSides, ...(side === undefined ? [] : [side])])].map((value) => ({
            value,
            words: capitalise(sideWords[value]),
          }))}
        />
      )}
    </div>
  );
}
