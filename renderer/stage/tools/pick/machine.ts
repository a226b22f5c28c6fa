import { hitMarks } from '../../../../shared-lib/geometry/hit-test.ts';
import { canLoseVertex, withoutVertex } from '../../../../shared-lib/geometry/vertices.ts';
import type { ImagePoint, Mark } from '../../../../shared-lib/model/mark.ts';
import {
  type Draft,
  distancePx,
  type Effect,
  type Machine,
  reachPx,
  type StageEvent,
  type Step,
  shakePx,
  stay,
  type ToolView,
} from '../machine.ts';
import { type Grip, gripAt, led, pulled, tagAt } from './grips.ts';
import { bentTo, handlesOf, isLed } from './way.ts';

export type PickState =
  /** `vertex`: the point of the picked mark that was clicked last; Delete takes it. */
  | { readonly name: 'idle'; readonly vertex: number | null }
  | {
      readonly name: 'pressing';
      readonly markId: string;
      readonly grip: Grip;
      readonly from: ImagePoint;
      /** The second press on the same point: letting go there takes the point away. */
      readonly again: boolean;
    }
  | {
      readonly name: 'moving';
      readonly markId: string;
      readonly grip: Grip;
      readonly from: ImagePoint;
      readonly to: ImagePoint;
    }
  /** Taken up by the keyboard: it follows the cross-hair until the next press puts it down. */
  | {
      readonly name: 'carrying';
      readonly markId: string;
      readonly grip: Grip;
      readonly from: ImagePoint;
      readonly to: ImagePoint;
    };

const idle: PickState = { name: 'idle', vertex: null };

/** Picks a mark; moves the picked one, its points and its tag. */
export const pickMachine: Machine<PickState> = {
  initial: idle,
  step(state, event, view) {
    switch (event.type) {
      case 'down':
        if (state.name === 'carrying') return putDown(state, event.at, view);
        return press(event, state.name === 'idle' ? state.vertex : null, view);
      case 'move':
        if (state.name === 'pressing') {
          if (distancePx(state.from, event.at, view) < shakePx[event.by]) return stay(state);
          return stay<PickState>({ ...taken(state), name: 'moving', to: event.at });
        }
        return stay<PickState>(state.name === 'idle' ? state : { ...state, to: event.at });
      case 'up':
        if (state.name === 'moving') return putDown(state, event.at, view);
        if (state.name !== 'pressing') return stay(state);
        if (event.by === 'keyboard') return stay<PickState>({ ...taken(state), name: 'carrying', to: event.at });
        if (state.grip.kind !== 'vertex') return stay(idle);
        return state.again
          ? takeVertex(state.grip.index, view)
          : stay<PickState>({ name: 'idle', vertex: state.grip.index });
      case 'cancel':
        return state.name === 'idle' && state.vertex === null ? stay(idle, { type: 'pick', markId: null }) : stay(idle);
      case 'abort':
        return stay(state.name === 'carrying' ? state : idle);
      case 'delete':
        return state.name === 'idle' ? remove(state.vertex, view) : stay(state);
      case 'next-mark':
      case 'previous-mark':
        return state.name === 'idle' ? cycleMarks(event.type === 'next-mark' ? 1 : -1, view) : stay(state);
      case 'next-vertex':
      case 'previous-vertex':
        return state.name === 'idle'
          ? cycleVertices(state.vertex, event.type === 'next-vertex' ? 1 : -1, view)
          : stay(state);
      default:
        return stay(state);
    }
  },
  draft(state, view): Draft | null {
    if (state.name !== 'moving' && state.name !== 'carrying') return null;
    const mark = markOf(state.markId, view);
    if (!mark) return null;
    const way = led(mark, state.grip, state.from, state.to, view.photo);
    if (way)
      return {
        shape: mark.shape,
        points: bentTo(mark.points, way),
        handles: way,
        markId: mark.id,
        tagAt: null,
        focus: state.to,
      };
    const points = pulled(mark, state.grip, state.from, state.to, view.photo);
    return {
      shape: mark.shape,
      points: points ?? mark.points,
      markId: mark.id,
      tagAt: state.grip.kind === 'tag' ? shifted(state.grip.centre, state.from, state.to) : null,
      focus: state.to,
    };
  },
  activeVertex: (state) => (state.name === 'idle' ? state.vertex : null),
};

function markOf(id: string | null, { marks }: ToolView): Mark | undefined {
  return marks.find((mark) => mark.id === id);
}

/** What a hand has hold of, and from where. */
function taken({ markId, grip, from }: PickState & { name: 'pressing' }) {
  return { markId, grip, from };
}

function press(event: StageEvent & { type: 'down' }, vertex: number | null, view: ToolView): Step<PickState> {
  const { at, by } = event;
  const picked = markOf(view.picked, view);
  const grip = picked ? gripAt(picked, at, by, view) : null;
  if (picked && (grip?.kind === 'vertex' || grip?.kind === 'middle')) {
    const again = event.again && grip.kind === 'vertex' && grip.index === vertex;
    return stay<PickState>({ name: 'pressing', markId: picked.id, grip, from: at, again });
  }
  const tag = tagAt(at, view);
  if (tag) return held(tag.markId, { kind: 'tag', centre: tag.centre }, at, ...pickIfNew(tag.markId, view));
  if (picked && grip) return held(picked.id, grip, at);
  const hit = hitMarks(view.marks, at, view.view, reachPx[by]);
  // A drag never moves a mark that was not picked before: evidence is not shifted by a slip.
  if (hit) return stay(idle, ...pickIfNew(hit.id, view), { type: 'pan' });
  if (event.again) return stay(idle, { type: 'fit' });
  return stay(idle, ...pickIfNew(null, view), { type: 'pan' });
}

function held(markId: string, grip: Grip, from: ImagePoint, ...effects: Effect[]): Step<PickState> {
  return stay<PickState>({ name: 'pressing', markId, grip, from, again: false }, ...effects);
}

function pickIfNew(markId: string | null, { picked }: ToolView): Effect[] {
  return markId === picked ? [] : [{ type: 'pick', markId }];
}

function putDown(state: PickState & { name: 'moving' | 'carrying' }, at: ImagePoint, view: ToolView): Step<PickState> {
  const mark = markOf(state.markId, view);
  if (!mark || distancePx(state.from, at, view) === 0) return stay(idle);
  const way = led(mark, state.grip, state.from, at, view.photo);
  if (way) return stay<PickState>(idle, lead(mark.id, way));
  const points = pulled(mark, state.grip, state.from, at, view.photo);
  const vertex = state.grip.kind === 'vertex' ? state.grip.index : null;
  if (points) return stay<PickState>({ name: 'idle', vertex }, change(mark.id, points));
  if (state.grip.kind !== 'tag') return stay(idle);
  const place = shifted(state.grip.centre, state.from, at);
  return stay(idle, { type: 'commit', change: { type: 'change', markId: mark.id, tagAt: place } });
}

function change(markId: string, points: ImagePoint[]): Effect {
  return { type: 'commit', change: { type: 'change', markId, points } };
}

function lead(markId: string, points: ImagePoint[]): Effect {
  return { type: 'commit', change: { type: 'retrace', markId, points } };
}

function shifted(centre: ImagePoint, from: ImagePoint, to: ImagePoint): ImagePoint {
  return { x: centre.x + to.x - from.x, y: centre.y + to.y - from.y };
}

function takeVertex(vertex: number, view: ToolView): Step<PickState> {
  const picked = markOf(view.picked, view);
  if (picked && isLed(picked)) return stay(idle, ...withoutWayPoint(picked, vertex));
  if (!picked || vertex >= picked.points.length || !canLoseVertex(picked.shape, picked.points)) return stay(idle);
  return stay(idle, change(picked.id, withoutVertex(picked.points, vertex)));
}

/** A trace keeps its two ends. */
function withoutWayPoint(mark: Mark, index: number): Effect[] {
  const way = [...handlesOf(mark)];
  return index > 0 && index < way.length - 1 ? [lead(mark.id, withoutVertex(way, index))] : [];
}

function remove(vertex: number | null, view: ToolView): Step<PickState> {
  const picked = markOf(view.picked, view);
  if (!picked) return stay(idle);
  const isBetween = vertex !== null && vertex > 0 && vertex < handlesOf(picked).length - 1;
  if (vertex !== null && (isLed(picked) ? isBetween : canLoseVertex(picked.shape, picked.points)))
    return takeVertex(vertex, view);
  return stay(idle, { type: 'commit', change: { type: 'remove', markId: picked.id } }, { type: 'pick', markId: null });
}

/** Past the last mark nothing is picked, and the keyboard may leave the stage. */
function cycleMarks(by: 1 | -1, view: ToolView): Step<PickState> {
  const now = view.marks.findIndex((mark) => mark.id === view.picked);
  const next = view.marks[now < 0 ? (by > 0 ? 0 : view.marks.length - 1) : now + by];
  const at = next?.points[0];
  if (!next || !at) return stay(idle, { type: 'pick', markId: null });
  return stay(idle, { type: 'pick', markId: next.id }, { type: 'look-at', at });
}

function cycleVertices(vertex: number | null, by: 1 | -1, view: ToolView): Step<PickState> {
  const picked = markOf(view.picked, view);
  const points = picked ? handlesOf(picked) : [];
  if (points.length === 0) return stay(idle);
  const next = vertex === null ? (by > 0 ? 0 : points.length - 1) : (vertex + by + points.length) % points.length;
  const at = points[next];
  return at ? stay<PickState>({ name: 'idle', vertex: next }, { type: 'look-at', at }) : stay(idle);
}
