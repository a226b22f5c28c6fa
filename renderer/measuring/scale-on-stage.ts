import { fitEllipse } from '../../shared-lib/calibration/ellipse.ts';
import type { SeenCard } from '../../shared-lib/contract/card.ts';
import type { Mark, ShapeName } from '../../shared-lib/model/mark.ts';
import type { StageLabel } from '../stage/stage-scene.ts';
import type { ToolName } from '../stage/tools/index.ts';
import type { MarkChange } from '../stage/tools/machine.ts';
import type { ScaleDraft, ScaleWay, SetPoint } from './scale-draft.ts';

const rimPoints = 96;
const fitId = 'reference fit';

/** The tool that sets points for each way; the others pick and move what is set. */
export const toolOfWay: Readonly<Record<ScaleWay, ToolName>> = {
  'known-length': 'span',
  'known-circle': 'point',
  'known-points': 'point',
};

const markAt = (shotId: string, id: string, shape: ShapeName, points: Mark['points']): Mark => ({
  id,
  shotId,
  findingId: null,
  shape,
  points,
  role: 'calibration',
  origin: { by: 'hand' },
  calibrationId: null,
  tagAt: null,
  note: '',
});

/** What is set so far, as marks of the stage: a span, or a point each, with the circle that fits. */
export function marksOfDraft({ way, points }: ScaleDraft, shotId: string): Mark[] {
  const set = points[way];
  if (way === 'known-length')
    return set.length === 2
      ? [
          markAt(
            shotId,
            'reference',
            'span',
            set.map(({ at }) => at),
          ),
        ]
      : [];
  const single = set.map(({ at }, index) => markAt(shotId, `reference ${index}`, 'point', [at]));
  if (way === 'known-points') return single;
  const rim = set.length >= 5 ? fitEllipse(set.map(({ at }) => at)) : null;
  if (!rim) return single;
  const { centre, semiMajor, semiMinor, angle } = rim;
  const outline = Array.from({ length: rimPoints }, (_, k) => {
    const [u, v] = [
      semiMajor * Math.cos((2 * Math.PI * k) / rimPoints),
      semiMinor * Math.sin((2 * Math.PI * k) / rimPoints),
    ];
    return {
      x: centre.x + u * Math.cos(angle) - v * Math.sin(angle),
      y: centre.y + u * Math.sin(angle) + v * Math.cos(angle),
    };
  });
  return [markAt(shotId, fitId, 'area', outline), ...single];
}

/** A found card, outlined on the stage; like the fitted circle it is moved by nothing. */
export function marksOfCard({ outline }: Pick<SeenCard, 'outline'>, shotId: string): Mark[] {
  return [markAt(shotId, fitId, 'area', [...outline])];
}

/** Every set point by its number, and how far off the fit it lies where that is known. */
export function labelsOfDraft({ way, points }: ScaleDraft, residualsPx: readonly number[]): StageLabel[] {
  if (way === 'known-length') return [];
  return points[way].map(({ at }, index) => {
    const off = residualsPx[index];
    const isTold = off !== undefined && !(way === 'known-points' && residualsPx.length === 4);
    return { id: `label ${index}`, at, text: isTold ? `${index + 1}: ${off.toFixed(1)} px` : `${index + 1}` };
  });
}

/** The draft after a gesture on the stage. The fitted circle follows its points and is moved by nothing else. */
export function draftAfter(draft: ScaleDraft, change: MarkChange, pointPx: number): ScaleDraft {
  const set = draft.points[draft.way];
  const withPoints = (points: readonly SetPoint[]): ScaleDraft => ({
    ...draft,
    points: { ...draft.points, [draft.way]: points },
  });
  const fresh = (points: Mark['points']): SetPoint[] => points.map((at) => ({ at, pointPx }));
  if (change.type === 'add')
    return withPoints(draft.way === 'known-length' ? fresh(change.points) : [...set, ...fresh(change.points)]);
  if (change.type === 'trace' || change.type === 'retrace' || change.type === 'grow') return draft;
  if (change.markId === fitId) return draft;
  if (draft.way === 'known-length') {
    if (change.type === 'remove') return withPoints([]);
    return change.points ? withPoints(movedOnly(set, fresh(change.points))) : draft;
  }
  const index = Number(change.markId.replace('reference ', ''));
  if (change.type === 'remove') {
    return { ...withPoints(set.toSpliced(index, 1)), places: draft.places.toSpliced(index, 1) };
  }
  const [moved] = fresh(change.points ?? []);
  return moved && set[index] ? withPoints(set.with(index, moved)) : draft;
}

/** An end that was not touched keeps the sureness that it was set with. */
function movedOnly(before: readonly SetPoint[], after: readonly SetPoint[]): SetPoint[] {
  return after.map((point, index) => {
    const old = before[index];
    return old && old.at.x === point.at.x && old.at.y === point.at.y ? old : point;
  });
}
