import { useMemo } from 'react';
import type { Homography } from '../../shared-lib/calibration/homography.ts';
import { dateWords } from '../ui/words.ts';
import paneStyles from './ComparePane.module.css';
import { ComparePane } from './ComparePane.tsx';
import { marksToday, oldMarksIn } from './drawn-marks.ts';
import { PhotoLayer, PiecesLayer } from './PhotoLayer.tsx';
import type { LookedAt } from './SideBySide.tsx';
import { SwipeLine } from './SwipeLine.tsx';
import styles from './ThenAndNow.module.css';

interface OneOverOtherProps extends LookedAt {
  readonly toLater: Homography;
  readonly way: 'swipe' | 'flip' | 'beside';
  readonly share: number;
  readonly onShare: (share: number) => void;
  readonly isThen: boolean;
}

/** The earlier photo over today's: up to a line that is drawn across, or all of it and then none. */
export function OneOverOther(props: OneOverOtherProps) {
  const { record, shot, seen, view, stage, onView, onStage, pieces, toLater, way, share, onShare, isThen } = props;
  const isSwipe = way === 'swipe';
  const ghosts = useMemo(() => oldMarksIn(seen.oldMarks, toLater, true), [seen.oldMarks, toLater]);
  const oldMarks = useMemo(() => oldMarksIn(seen.oldMarks, toLater, false), [seen.oldMarks, toLater]);
  const today = useMemo(() => marksToday(record, shot.id), [record, shot.id]);
  const isShowingThen = !isSwipe && isThen;
  const then = `Then, ${dateWords(seen.earlier.date)}`;
  const now = `Now, ${dateWords(record.visit.date)}`;
  const clip = isSwipe ? `inset(0 ${(1 - share) * 100}% 0 0)` : isThen ? undefined : 'inset(0 100% 0 0)';
  return (
    <div className={styles.over}>
      <ComparePane
        label={isSwipe ? `${then}, left of the line; ${now}, right of it` : isThen ? then : now}
        caption={isSwipe || isThen ? then : now}
        frame={shot}
        view={view}
        stage={stage}
        onView={onView}
        onStage={onStage}
        marks={isShowingThen ? oldMarks : [...today, ...ghosts]}
        over={
          isSwipe && (
            <>
              <p className={paneStyles.caption} data-side="right">
                {now}
              </p>
              <SwipeLine share={share} onShare={onShare} />
            </>
          )
        }
      >
        <PhotoLayer shot={shot} view={view} />
        <div className={paneStyles.layer} style={{ clipPath: clip }}>
          <PhotoLayer shot={seen.earlier.shot} view={view} mapping={toLater} />
          <PiecesLayer pieces={pieces} view={view} />
        </div>
      </ComparePane>
    </div>
  );
}
