import type { Diagram } from '../../shared-lib/diagrams/diagram-for.ts';
import { DiagramLines } from './DiagramLines.tsx';
import { DiagramParts } from './DiagramParts.tsx';
import styles from './LocationDiagram.module.css';

interface LocationDiagramProps {
  readonly diagram: Diagram;
  /** A part was picked on the drawing; left out where it only shows. */
  readonly onPick?: ((path: string) => void) | undefined;
}

/** How much a drawing may be enlarged to fill its pane. */
const largest = 1.2;

/** Where something is, as a line drawing; and, where it may be picked on, a way to say where. */
export function LocationDiagram({ diagram, onPick }: LocationDiagramProps) {
  const { title, notes, mirrored, width } = diagram;
  return (
    <figure className={styles.figure} aria-label={title}>
      <div className={styles.drawing} style={{ maxWidth: width * largest }}>
        <DiagramLines diagram={diagram} />
        {onPick !== undefined && <DiagramParts diagram={diagram} onPick={onPick} />}
      </div>
      {notes.length > 0 && (
        <figcaption className={styles.notes}>
          {mirrored && <MirrorSign />}
          <span>
            {notes.map((note, index) => (
              <span key={note} className={mirrored && index === 1 ? styles.swap : undefined}>
                {note}{' '}
              </span>
            ))}
          </span>
        </figcaption>
      )}
    </figure>
  );
}

function MirrorSign() {
  return (
    <svg className={styles.sign} width="24" height="18" viewBox="0 0 24 18" aria-hidden="true">
      <path className={styles.filled} d="M8.5 3.5V14.5L1 9Z" />
      <path d="M15.5 3.5V14.5L23 9Z" />
      <path d="M12 1V17" strokeDasharray="3 2" />
    </svg>
  );
}
