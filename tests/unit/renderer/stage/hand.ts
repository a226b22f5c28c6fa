import { expect } from 'vitest';
import { type ToolName, toolNamed } from '../../../../renderer/stage/tools/index.ts';
import type {
  Effect,
  MarkChange,
  PointerKind,
  Session,
  StageEvent,
  ToolView,
} from '../../../../renderer/stage/tools/machine.ts';
import type { Mark, ShapeName } from '../../../../shared-lib/model/mark.ts';

type At = readonly [x: number, y: number];

export function markOf(id: string, shape: ShapeName, ...points: At[]): Mark {
  return {
    id,
    shotId: 'shot',
    findingId: null,
    shape,
    points: points.map(([x, y]) => ({ x, y })),
    role: 'finding',
    origin: { by: 'hand' },
    calibrationId: null,
    tagAt: null,
    note: '',
  };
}

/** A hand on the photo: it presses, moves and lets go, and remembers what came of it. Marks change as the record would. */
export class Hand {
  private session: Session;
  private view: ToolView;
  private by: PointerKind = 'mouse';
  private at = { x: 0, y: 0 };
  private readonly commits: MarkChange[] = [];
  private readonly others: Effect[] = [];

  constructor(tool: ToolName, view: Partial<ToolView> = {}) {
    this.session = toolNamed(tool).start();
    this.view = {
      view: { scale: 1, x: 0, y: 0 },
      photo: { width: 800, height: 600 },
      marks: [],
      picked: null,
      tagBoxes: [],
      ...view,
    };
  }

  with(by: PointerKind): this {
    this.by = by;
    return this;
  }

  pointerDown(x: number, y: number, again = false): this {
    this.at = { x, y };
    return this.send({ type: 'down', at: this.at, by: this.by, again });
  }

  move(x: number, y: number): this {
    this.at = { x, y };
    return this.send({ type: 'move', at: this.at, by: this.by });
  }

  up(): this {
    return this.send({ type: 'up', at: this.at, by: this.by });
  }

  click(x: number, y: number): this {
    return this.pointerDown(x, y).up();
  }

  doubleClick(x: number, y: number): this {
    return this.click(x, y).pointerDown(x, y, true).up();
  }

  /** Enter or Space at the cross-hair, which stands where it was moved to last. */
  enter(): this {
    return this.with('keyboard').pointerDown(this.at.x, this.at.y).up();
  }

  key(type: Exclude<StageEvent['type'], 'down' | 'move' | 'up'>): this {
    return this.send({ type });
  }

  expectState(name: string): this {
    expect(this.session.stateName).toBe(name);
    return this;
  }

  expectDraft(...points: At[]): this {
    expect(this.session.draft(this.view)?.points ?? []).toEqual(points.map(([x, y]) => ({ x, y })));
    return this;
  }

  expectNothingDone(): this {
    expect(this.commits).toEqual([]);
    return this;
  }

  /** All that was done, each one a step of undo. */
  expectDone(...changes: MarkChange[]): this {
    expect(this.commits).toEqual(changes);
    return this;
  }

  expectDrawn(shape: ShapeName, ...points: At[]): this {
    return this.expectDone({ type: 'add', shape, points: points.map(([x, y]) => ({ x, y })) });
  }

  expectPicked(id: string | null): this {
    expect(this.view.picked).toBe(id);
    return this;
  }

  expectEffect(type: Effect['type']): this {
    expect(this.others.map((effect) => effect.type)).toContain(type);
    return this;
  }

  get done(): readonly MarkChange[] {
    return this.commits;
  }

  private send(event: StageEvent): this {
    const { session, effects } = this.session.step(event, this.view);
    this.session = session;
    for (const effect of effects) this.carryOut(effect);
    return this;
  }

  private carryOut(effect: Effect): void {
    if (effect.type === 'pick') this.view = { ...this.view, picked: effect.markId };
    else if (effect.type === 'commit') {
      this.commits.push(effect.change);
      this.view = { ...this.view, marks: changed(this.view.marks, effect.change) };
    } else {
      this.others.push(effect);
      if (effect.type === 'look-at') this.at = effect.at;
    }
  }
}

function changed(marks: readonly Mark[], change: MarkChange): readonly Mark[] {
  // What a tracer would find is not the hand's to know.
  if (change.type === 'add' || change.type === 'trace' || change.type === 'retrace' || change.type === 'grow')
    return marks;
  if (change.type === 'remove') return marks.filter(({ id }) => id !== change.markId);
  return marks.map((mark) => (mark.id === change.markId ? { ...mark, points: change.points ?? mark.points } : mark));
}
