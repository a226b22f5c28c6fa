import { useEffect, useEffectEvent, useMemo, useRef, useState } from 'react';
import type { ThenAndNow as Seen } from '../../shared-lib/contract/comparisons.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Size, XY } from '../../shared-lib/geometry/spaces.ts';
import { clampView, fitView, type View } from '../../shared-lib/geometry/viewport.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { useLetterKeys } from '../stage/use-letter-keys.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { classNames } from '../ui/class-names.ts';
import laidOut from '../ui/panes.module.css';
import { ComparePanel } from './ComparePanel.tsx';
import { asTaken, pairFrom, type Side, straightened } from './frames.ts';
import { addKey, flipKey, type Way, ways } from './keys.ts';
import { OneOverOther } from './OneOverOther.tsx';
import { SideBySide } from './SideBySide.tsx';
import styles from './ThenAndNow.module.css';
import { useComparison } from './use-comparison.ts';
import { useEarlierPicture } from './use-earlier-picture.ts';

interface ThenAndNowProps {
  readonly record: VisitRecord;
  readonly shot: Shot;
  readonly seen: Seen;
  readonly onClose: () => void;
}

/** Then and now: side by side with the points that match, or one over the other. */
export function ThenAndNow({ record, shot, seen, onClose }: ThenAndNowProps) {
  const earlier = seen.earlier.shot;
  const hand = useComparison(seen, shot);
  const [way, setWay] = useState<Way>('beside');
  const [isAsTaken, setAsTaken] = useState(false);
  const [isAdding, setAdding] = useState(false);
  const [picked, setPicked] = useState<number | null>(null);
  const [share, setShare] = useState(0.5);
  const [isThen, setThen] = useState(true);
  const [isFlipping, setFlipping] = useState(false);
  const [stage, setStage] = useState<Size>({ width: 1, height: 1 });
  const [moved, setMoved] = useState<View | null>(null);
  const view = useMemo(() => (moved ? clampView(moved, shot, stage) : fitView(shot, stage)), [moved, shot, stage]);
  const { registration } = hand;
  const straight = useMemo(() => registration && straightened(registration.toLater, shot), [registration, shot]);
  const frame = isAsTaken || !straight ? asTaken(earlier) : straight;
  const pieces = useEarlierPicture({
    shot,
    earlier,
    pairs: hand.pairs,
    isWanted: straight !== null && hand.error === null,
    view,
    stage,
  });

  useEffect(() => {
    if (way !== 'flip' || !isFlipping) return;
    const timer = setInterval(() => setThen((then) => !then), 800);
    return () => clearInterval(timer);
  }, [way, isFlipping]);

  const add = (side: Side, at: XY) => {
    setAdding(false);
    const photos = { earlier, later: shot };
    setPicked(hand.pairs.length);
    hand.set([...hand.pairs, pairFrom(side, at, registration?.toLater ?? null, photos)]);
  };
  const remove = (index: number) => {
    setPicked(null);
    hand.set(hand.pairs.filter((_, k) => k !== index));
  };
  const choose = (next: Way) => {
    setWay(next);
    setAdding(false);
  };
  const flip = () => {
    setFlipping(false);
    setThen((then) => !then);
  };
  useLetterKeys((letter) => {
    const meant = ways.find(({ keyCap }) => keyCap === letter);
    if (meant && straight) choose(meant.value);
    else if (letter === addKey && way === 'beside') setAdding((adding) => !adding);
    else if (letter === flipKey && way === 'flip') flip();
    else return false;
    return true;
  });
  const panes = useRef<HTMLDivElement>(null);
  const leave = useEffectEvent((event: KeyboardEvent) => {
    if (event.key !== 'Escape' || event.defaultPrevented) return;
    const isOurs = event.target === document.body || panes.current?.contains(event.target as Node) === true;
    if (!isOurs) return;
    event.preventDefault();
    if (isAdding) setAdding(false);
    else onClose();
  });
  useEffect(() => {
    // Heard from the document: what was pressed last may be gone, and the focus with it.
    const listener = (event: KeyboardEvent) => leave(event);
    document.addEventListener('keydown', listener);
    return () => document.removeEventListener('keydown', listener);
  }, []);

  const shared = { record, shot, seen, view, stage, onView: setMoved, onStage: setStage, pieces };
  return (
    <div ref={panes} className={classNames(laidOut.panes, styles.panes)}>
      <div className={styles.work}>
        <div className={styles.bar}>
          <Choice
            label="Way of comparing"
            hideLabel
            options={straight ? ways : ways.slice(0, 1)}
            value={straight ? way : 'beside'}
            onChoose={choose}
          />
          {(way === 'beside' || !straight) && (
            <>
              <Button onPress={() => setAdding(!isAdding)} pressed={isAdding} keyCap={addKey}>
                {isAdding ? 'Press on a spot ...' : 'Add a point'}
              </Button>
              {straight && (
                <Button look="link" onPress={() => setAsTaken(!isAsTaken)} pressed={isAsTaken}>
                  {isAsTaken ? 'Straighten the earlier one' : 'The earlier one as it was taken'}
                </Button>
              )}
            </>
          )}
          {way === 'flip' && straight && (
            <>
              <Button onPress={flip} keyCap={flipKey}>
                {isThen ? 'Show now' : 'Show then'}
              </Button>
              <Button look="link" onPress={() => setFlipping(!isFlipping)} pressed={isFlipping}>
                {isFlipping ? 'Stop' : 'Keep flipping'}
              </Button>
            </>
          )}
        </div>
        {way === 'beside' || !straight || !registration ? (
          <SideBySide
            {...shared}
            hand={hand}
            frame={frame}
            picked={picked}
            onPicked={setPicked}
            isAdding={isAdding}
            onAdd={add}
            onRemove={remove}
          />
        ) : (
          <OneOverOther
            {...shared}
            toLater={registration.toLater}
            way={way}
            share={share}
            onShare={setShare}
            isThen={isThen}
          />
        )}
      </div>
      <ComparePanel
        record={record}
        shot={shot}
        seen={seen}
        hand={hand}
        picked={picked}
        onPicked={setPicked}
        onRemove={remove}
        onClose={onClose}
      />
    </div>
  );
}
