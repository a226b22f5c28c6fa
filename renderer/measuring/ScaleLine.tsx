import type { CalibratedPlane } from '../../shared-lib/measuring/calibrated-plane.ts';
import { newestOfEach } from './PlaneList.tsx';
import styles from './ScaleLine.module.css';

interface ScaleLineProps {
  readonly planes: readonly CalibratedPlane[];
  /** The face that is shown straightened. */
  readonly straight: string | null;
  readonly onStraight: (calibrationId: string | null) => void;
}

/** Which faces of the photo have a scale, in its caption; and the way to see one square on. */
export function ScaleLine({ planes, straight, onStraight }: ScaleLineProps) {
  if (planes.length === 0) return null;
  if (straight !== null) {
    const shown = planes.find(({ id }) => id === straight);
    return (
      <span className={styles.line}>
        <span>straightened: {shown?.plane}</span>
        <button type="button" className={styles.button} onClick={() => onStraight(null)}>
          <span>As photographed</span>
        </button>
      </span>
    );
  }
  return (
    <span className={styles.line}>
      {newestOfEach(planes).map((plane) => (
        <span key={plane.id} className={styles.line}>
          <span>
            scale in {plane.plane}, {plane.pxPerMm.toFixed(1)} px per mm
          </span>
          {plane.method !== 'known-length' && (
            <button
              type="button"
              className={styles.button}
              onClick={() => onStraight(plane.id)}
              aria-label={`Straighten ${plane.plane}`}
            >
              <span>Straighten</span>
            </button>
          )}
        </span>
      ))}
    </span>
  );
}
