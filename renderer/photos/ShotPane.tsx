import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { PlaceField } from '../findings/PlaceField.tsx';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import type { ToolName } from '../stage/tools/index.ts';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { TextField } from '../ui/TextField.tsx';
import { CameraClock } from './CameraClock.tsx';
import { MarkFiles } from './MarkFiles.tsx';
import { momentWords } from './moment-words.ts';
import styles from './ShotPane.module.css';
import { TakePhotosLine } from './TakePhotosLine.tsx';

interface ShotPaneProps {
  readonly record: VisitRecord;
  readonly shot: Shot;
  readonly onMarkWith: (tool: ToolName) => void;
  readonly onScale: () => void;
  readonly onFinding: (findingId: string) => void;
}

/** The photo on the stage while no finding is in hand: what it shows, and what was found on it. */
export function ShotPane({ record, shot, onMarkWith, onScale, onFinding }: ShotPaneProps) {
  const change = useChange('shot.change');
  const bin = useChange('shot.bin');
  const visit = useChange('visit.change');
  const { layout } = record.layout;
  const shown = new Set(record.proofs.filter(({ shotId }) => shotId === shot.id).map(({ findingId }) => findingId));
  const lines = record.standing.lines.filter(({ findingId }) => shown.has(findingId));
  const { currentPart } = record.visit;
  const error = change.error ?? bin.error ?? visit.error;
  return (
    <aside className={styles.pane} aria-label={`Photo ${shot.sequence}`}>
      <h2>Photo {shot.sequence}</h2>
      <PlaceField
        label="Part"
        layout={layout}
        place={shot.component}
        onPlace={(component) => change.run({ id: shot.id, component })}
        wholePart
      />
      {shot.component !== null && shot.component !== currentPart && (
        <Button look="link" wraps onPress={() => visit.run({ id: record.visit.id, currentPart: shot.component })}>
          {`Next photos too: ${speakComponent(shot.component, layout)}`}
        </Button>
      )}
      {currentPart !== null && (
        <p className="soft small">
          Photos taken in now go to: {speakComponent(currentPart, layout)}{' '}
          <Button look="link" onPress={() => visit.run({ id: record.visit.id, currentPart: null })}>
            To no part
          </Button>
        </p>
      )}
      <TextField
        label="Seen from"
        value={shot.seenFrom}
        placeholder="below, the left, the seat"
        onCommit={(seenFrom) => change.run({ id: shot.id, seenFrom })}
        maxLength={200}
      />
      <TextField
        label="What it shows"
        value={shot.caption}
        onCommit={(caption) => change.run({ id: shot.id, caption })}
        maxLength={1000}
      />
      {error !== null && <ErrorNote {...wordsOf(error)} />}
      {lines.length === 0 ? (
        <p className={styles.hint}>Draw on the photo: the mark begins a finding, and its card opens here.</p>
      ) : (
        <ul>
          {lines.map((line) => (
            <li key={line.findingId} className={styles.line}>
              <button type="button" className={styles.open} onClick={() => onFinding(line.findingId)}>
                <TagPlate number={line.number} tier={line.tier} state={line.state} />
                <span>{line.title}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className={styles.row}>
        <Button onPress={() => onMarkWith('trace')}>Trace a crack</Button>
        <Button onPress={() => onMarkWith('grow')}>Grow a patch</Button>
        <Button onPress={() => onMarkWith('area')}>Mark an area</Button>
        <Button onPress={onScale}>Set the scale</Button>
      </div>
      <dl className={styles.facts}>
        <dt>Taken</dt>
        <dd>{momentWords(shot)}</dd>
        <dt>Camera</dt>
        <dd>{shot.camera ?? 'not named'}</dd>
        <dt>File</dt>
        <dd className={styles.name}>{shot.offeredName}</dd>
      </dl>
      <CameraClock record={record} shot={shot} />
      <MarkFiles key={shot.id} record={record} shot={shot} />
      <TakePhotosLine visitId={record.visit.id} />
      <Button look="link" onPress={() => bin.run({ id: shot.id })} disabled={bin.isRunning}>
        Put this photo in the bin
      </Button>
    </aside>
  );
}
