import { useMemo } from 'react';
import { outlineOf } from '../../shared-lib/geometry/outlines/index.ts';
import type { Stretches, Stroke } from '../../shared-lib/geometry/outlines/outline.ts';
import type { Size, XY } from '../../shared-lib/geometry/spaces.ts';
import { placeTags } from '../../shared-lib/geometry/tag-placement.ts';
import { drawTagPlate, type Tag } from '../../shared-lib/geometry/tag-plate.ts';
import { toScreen, type View } from '../../shared-lib/geometry/viewport.ts';
import type { ShapeName } from '../../shared-lib/model/mark.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import styles from './ComparePane.module.css';

/** A mark as it is drawn over a photo, in pixels of the frame that is looked at. */
export interface DrawnMark {
  readonly id: string;
  readonly shape: ShapeName;
  readonly points: readonly XY[];
  readonly tag: Tag | null;
  /** Where the tracer guessed, or a border is hardly to be seen. */
  readonly unsure: Stretches;
  /** Carried over from an earlier photo: thin, without the blue of what is in hand. */
  readonly isGhost: boolean;
}

/** As on the stage: a line of dots says that nobody is sure that it runs here. */
const dots = '0 13';

interface MarksOverProps {
  readonly marks: readonly DrawnMark[];
  readonly view: View;
  readonly stage: Size;
}

const pathOf = (strokes: readonly Stroke[]): string =>
  strokes
    .map(
      ({ points, closed }) =>
        `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}${closed ? 'Z' : ''}`,
    )
    .join('');

/** Marks and their tags over a photo. They are said in words beside it, so a reader of the screen passes them over. */
export function MarksOver({ marks, view, stage }: MarksOverProps) {
  const drawn = useMemo(
    () =>
      marks.map((mark) => ({
        ...mark,
        strokes: outlineOf(
          mark.shape,
          mark.points.map((at) => toScreen(view, at)),
          mark.unsure,
        ),
      })),
    [marks, view],
  );
  const places = useMemo(
    () =>
      placeTags(
        drawn.flatMap(({ id, strokes, tag }) => {
          if (!tag) return [];
          const { width, height } = drawTagPlate(tag);
          return [{ id, strokes, size: { width, height }, at: null }];
        }),
        { left: 0, top: 0, right: stage.width, bottom: stage.height },
      ),
    [drawn, stage],
  );
  return (
    <div className={styles.over} aria-hidden="true">
      <svg className={styles.strokes} width={stage.width} height={stage.height} focusable="false" aria-hidden="true">
        {drawn.map(({ id, strokes, isGhost, tag }) => {
          const { leader } = places.get(id) ?? { leader: null };
          const line = leader && `M${leader.from.x} ${leader.from.y}L${leader.to.x} ${leader.to.y}`;
          const d = pathOf(strokes.filter(({ isUnsure }) => !isUnsure));
          const guessed = pathOf(strokes.filter(({ isUnsure }) => isUnsure));
          const dash = tag?.state === 'suspected' ? '11 7' : undefined;
          return (
            <g key={id} data-mark={isGhost ? 'ghost' : 'mark'}>
              {line && <path className={styles.leaderEdge} d={line} />}
              {line && <path className={styles.leader} d={line} />}
              {isGhost ? (
                <>
                  <path className={styles.ghostEdge} d={d} />
                  <path className={styles.ghost} d={d} />
                  {guessed && <path className={styles.ghostEdge} d={guessed} strokeDasharray={dots} />}
                  {guessed && <path className={styles.ghostDots} d={guessed} strokeDasharray={dots} />}
                </>
              ) : (
                <>
                  <path className={styles.edge} d={d} strokeDasharray={dash} />
                  <path className={styles.halo} d={d} strokeDasharray={dash} />
                  <path className={styles.line} d={d} strokeDasharray={dash} />
                  {guessed &&
                    [styles.edge, styles.halo, styles.line].map((stroke) => (
                      <path key={stroke} className={stroke} d={guessed} strokeDasharray={dots} />
                    ))}
                </>
              )}
            </g>
          );
        })}
      </svg>
      {drawn.map(({ id, tag, isGhost }) => {
        const place = places.get(id);
        if (!tag || !place) return null;
        return (
          <span
            key={id}
            className={styles.tag}
            data-ghost={isGhost || undefined}
            style={{ left: place.box.left, top: place.box.top }}
          >
            <TagPlate {...tag} />
          </span>
        );
      })}
    </div>
  );
}
