import { useMemo, useState } from 'react';
import { type Homography, project } from '../../shared-lib/calibration/homography.ts';
import type { ThenAndNow } from '../../shared-lib/contract/comparisons.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Size, XY } from '../../shared-lib/geometry/spaces.ts';
import { fitView, insidePhoto, type View } from '../../shared-lib/geometry/viewport.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { dateWords } from '../ui/words.ts';
import { ComparePane } from './ComparePane.tsx';
import { marksToday, oldMarksIn } from './drawn-marks.ts';
import { type Side, spotOf, type ThenFrame, withSpot } from './frames.ts';
import { PhotoLayer, PiecesLayer } from './PhotoLayer.tsx';
import { PointHandle } from './PointHandle.tsx';
import styles from './ThenAndNow.module.css';
import type { ComparisonInHand } from './use-comparison.ts';
import type { EarlierPiece } from './use-earlier-picture.ts';

export interface LookedAt {
  readonly record: VisitRecord;
  readonly shot: Shot;
  readonly seen: ThenAndNow;
  readonly view: View;
  readonly stage: Size;
  readonly onView: (view: View) => void;
  readonly onStage: (stage: Size) => void;
  readonly pieces: readonly EarlierPiece[];
}

interface SideBySideProps extends LookedAt {
  readonly hand: ComparisonInHand;
  readonly frame: ThenFrame;
  readonly picked: number | null;
  readonly onPicked: (index: number) => void;
  readonly isAdding: boolean;
  readonly onAdd: (side: Side, at: XY) => void;
  readonly onRemove: (index: number) => void;
}

const same: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** Then at the left, now at the right, with the points that match on both. */
export function SideBySide(props: SideBySideProps) {
  const { record, shot, seen, view, stage, onView, onStage, pieces, hand, frame, isAdding, onAdd } = props;
  const earlier = seen.earlier.shot;
  const [ownView, setOwnView] = useState<View | null>(null);
  const thenView = frame.isStraightened ? view : (ownView ?? fitView(frame.size, stage));
  const marksThen = useMemo(() => oldMarksIn(seen.oldMarks, frame.toFrame, false), [seen.oldMarks, frame]);
  const toLater = hand.registration?.toLater;
  const marksNow = useMemo(
    () => [...marksToday(record, shot.id), ...(toLater ? oldMarksIn(seen.oldMarks, toLater, true) : [])],
    [seen.oldMarks, toLater, record, shot.id],
  );
  /** A spot of the pane as a spot of its photo. */
  const onPhoto = (side: Side, at: XY): XY => {
    if (side === 'now') return insidePhoto(at, shot);
    const there = project(frame.fromFrame, at);
    return insidePhoto(there ?? at, earlier);
  };
  const handles = (side: Side, mapping: Homography, paneView: View) =>
    hand.pairs.map((pair, index) => {
      const at = project(mapping, spotOf(pair, side));
      if (!at) return null;
      const spot = (to: XY) => withSpot(hand.pairs, index, side, onPhoto(side, to));
      return (
        <PointHandle
          // biome-ignore lint/suspicious/noArrayIndexKey: a point is its number
          key={index}
          number={index + 1}
          label={`Point ${index + 1}, ${side}`}
          at={at}
          view={paneView}
          isPicked={props.picked === index}
          onPick={() => props.onPicked(index)}
          onMove={(to) => hand.show(spot(to))}
          onDone={(to) => hand.set(spot(to))}
          onRemove={() => props.onRemove(index)}
        />
      );
    });
  const press = (side: Side) => (at: XY) => {
    if (isAdding) onAdd(side, onPhoto(side, at));
  };
  return (
    <div className={styles.beside}>
      <ComparePane
        label="Then"
        caption={`Then, ${dateWords(seen.earlier.date)}`}
        frame={frame.size}
        view={thenView}
        stage={stage}
        onView={frame.isStraightened ? onView : setOwnView}
        onStage={onStage}
        marks={marksThen}
        isAdding={isAdding}
        onPress={press('then')}
        over={handles('then', frame.toFrame, thenView)}
      >
        <PhotoLayer shot={earlier} view={thenView} mapping={frame.isStraightened ? frame.toFrame : undefined} />
        {frame.isStraightened && <PiecesLayer pieces={pieces} view={view} />}
      </ComparePane>
      <ComparePane
        label="Now"
        caption={`Now, ${dateWords(record.visit.date)}`}
        frame={shot}
        view={view}
        stage={stage}
        onView={onView}
        onStage={onStage}
        marks={marksNow}
        isAdding={isAdding}
        onPress={press('now')}
        over={handles('now', same, view)}
      >
        <PhotoLayer shot={shot} view={view} />
      </ComparePane>
    </div>
  );
}
