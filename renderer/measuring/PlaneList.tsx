import type { CalibratedPlane } from '../../shared-lib/measuring/calibrated-plane.ts';
import { fitWords, referenceWords } from '../../shared-lib/measuring/words.ts';
import { useAppState } from '../app/app-state.ts';
import { Button } from '../ui/Button.tsx';
import styles from './ScalePane.module.css';

interface PlaneListProps {
  readonly planes: readonly CalibratedPlane[];
  readonly onStraight: (calibrationId: string) => void;
  readonly onAgain: (plane: CalibratedPlane) => void;
}

/** The newest scale of each face of a photo. */
export function newestOfEach(planes: readonly CalibratedPlane[]): CalibratedPlane[] {
  return [...new Map(planes.map((plane) => [plane.plane, plane])).values()];
}

/** The faces that have a scale. An older one of the same face stays on record and is shown no more. */
export function PlaneList({ planes, onStraight, onAgain }: PlaneListProps) {
  const { shop } = useAppState();
  if (planes.length === 0) return <p className="soft">No scale yet: sizes on this photo are in pixels.</p>;
  return (
    <ul aria-label="Faces with a scale">
      {newestOfEach(planes).map((plane) => (
        <li key={plane.id} className={styles.plane}>
          <p className={styles.name}>{plane.plane}</p>
          <p className="soft small">
            From {referenceWords(plane.reference, shop.units)}, {plane.pxPerMm.toFixed(1)} px per mm.{' '}
            {fitWords({ ...plane, way: plane.method })}
          </p>
          <div className={styles.row}>
            {plane.method !== 'known-length' && (
              <Button look="link" onPress={() => onStraight(plane.id)} label={`Straighten ${plane.plane}`}>
                Straighten
              </Button>
            )}
            <Button look="link" onPress={() => onAgain(plane)} label={`Set the scale of ${plane.plane} anew`}>
              Set it anew
            </Button>
          </div>
        </li>
      ))}
    </ul>
  );
}
