import { type ScreenPoint, type Size, screenPoint } from '../../shared-lib/geometry/spaces.ts';
import {
  bringIntoView,
  clampView,
  fitView,
  insidePhoto,
  sameView,
  toImage,
  toScreen,
  type View,
} from '../../shared-lib/geometry/viewport.ts';
import type { ImagePoint } from '../../shared-lib/model/mark.ts';
import type { Look } from './look.ts';
import { MarksPicture } from './marks-picture.ts';
import { type NavigationEvent, type NavigationState, navigate, still } from './navigation/machine.ts';
import { tagBoxesOnPhoto } from './overlay/tag-place-now.ts';
import { withPending } from './pending.ts';
import { PendingChange, spokenOf } from './pending-change.ts';
import type { PhotoPieces } from './photo/photo-pieces.ts';
import { type StageScene, type StageSnapshot, sameLabels, sameMarks, sameTags } from './stage-scene.ts';
import { toolNamed } from './tools/index.ts';
import type { Effect, MarkChange, PointerKind, Session, StageEvent, ToolView } from './tools/machine.ts';

/** After this long without a further step a movement counts as ended, and everything is drawn sharp. */
const restAfterMs = 130;
const crossHairMarginPx = 70;
/** Standard uncertainty of a point set by hand, in screen pixels; never finer than a pixel of the photo. Common practice, no source. */
const handPx = 1;

/** Joins tools, navigation, photo and picture of the marks. Knows neither React nor any raw event. */
export class StageController {
  snapshot: StageSnapshot;
  pieces: PhotoPieces | null = null;
  private scene: StageScene;
  private session: Session;
  private navigation: NavigationState = still;
  private pointer: { at: ScreenPoint; by: PointerKind; isDown: boolean } | null = null;
  private isLoupeHeld = false;
  private restTimer: ReturnType<typeof setTimeout> | undefined;
  private isFitted = true;
  private toldView: View | null = null;
  private readonly marksPicture = new MarksPicture((part) => this.set(part));
  private readonly pending = new PendingChange((pending) => {
    if (pending !== this.snapshot.pending) this.set({ pending });
  });
  private readonly listeners = new Set<() => void>();

  constructor(scene: StageScene) {
    this.scene = scene;
    this.session = toolNamed(scene.tool).start();
    const size = { width: 1, height: 1 };
    this.snapshot = {
      view: fitView(scene.photo, size),
      size,
      isMoving: false,
      draft: null,
      activeVertex: null,
      pending: null,
      crossHair: null,
      loupeAt: null,
      look: null,
      picture: null,
      isDrawn: false,
      spoken: '',
      photoChanges: 0,
      labels: scene.labels ?? [],
    };
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  readonly getSnapshot = (): StageSnapshot => this.snapshot;

  /** The screen says something new. */
  update(scene: StageScene): void {
    const before = this.scene;
    this.scene = scene;
    if (scene.tool !== before.tool) this.startTool();
    this.setLabels(scene);
    this.pending.hear(scene.marks);
    if (!sameMarks(scene.marks, before.marks) || !sameTags(scene.tags, before.tags) || scene.picked !== before.picked) {
      this.redrawMarks();
      this.refreshDraft();
    }
  }

  private setLabels({ labels = [] }: StageScene): void {
    if (!sameLabels(labels, this.snapshot.labels)) this.set({ labels });
  }

  /** A canvas does not wait for its typeface: everything is drawn again once it is there. */
  drawAgain(): void {
    const { look } = this.snapshot;
    if (look) this.setLook({ ...look });
  }

  setLook(look: Look): void {
    this.set({ look });
    this.redrawMarks();
  }

  resize(size: Size): void {
    const { view, size: before } = this.snapshot;
    if (size.width === before.width && size.height === before.height) return;
    const { photo } = this.scene;
    const centred = {
      ...view,
      x: view.x + (size.width - before.width) / 2,
      y: view.y + (size.height - before.height) / 2,
    };
    this.set({ size });
    this.setView(this.isFitted ? fitView(photo, size) : clampView(centred, photo, size));
  }

  /** Another photo: nothing of the old one stays but the tool. */
  showPhoto(scene: StageScene, view: View | null, pieces: PhotoPieces): void {
    this.scene = scene;
    this.pieces = pieces;
    this.pointer = null;
    this.isLoupeHeld = false;
    this.pending.drop();
    this.navigation = still;
    this.set({ crossHair: null, spoken: '', labels: scene.labels ?? [] });
    this.startTool();
    this.toldView = null;
    this.lookFrom(view ?? fitView(scene.photo, this.snapshot.size));
    this.redrawMarks();
  }

  /** A view that the screen hands in; the one it was told last is no news. */
  lookFrom(view: View): void {
    if (this.toldView && sameView(view, this.toldView)) return;
    this.setView(clampView(view, this.scene.photo, this.snapshot.size));
  }

  photoChanged(): void {
    this.set({ photoChanges: this.snapshot.photoChanges + 1 });
    if (!this.snapshot.isMoving) this.wantPixels();
  }

  close(): void {
    clearTimeout(this.restTimer);
    this.pending.close();
    this.marksPicture.close();
  }

  get toolView(): ToolView {
    const { photo, marks, picked } = this.scene;
    return {
      view: this.snapshot.view,
      photo,
      marks: withPending(marks, this.snapshot.pending),
      picked,
      tagBoxes: this.snapshot.picture ? tagBoxesOnPhoto(this.snapshot.picture) : [],
    };
  }

  get photo(): Size {
    return this.scene.photo;
  }

  get isNavigating(): boolean {
    return this.navigation.name !== 'still';
  }

  get isPicking(): boolean {
    return this.scene.tool === 'pick';
  }

  get hasDraft(): boolean {
    return this.snapshot.draft !== null;
  }

  send(event: StageEvent): void {
    const { session, effects } = this.session.step(event, this.toolView);
    this.session = session;
    for (const effect of effects) this.carryOut(effect);
    this.refreshDraft();
  }

  navigate(event: NavigationEvent): void {
    const { view, size } = this.snapshot;
    const next = navigate(this.navigation, event, view, { photo: this.scene.photo, stage: size });
    this.navigation = next.state;
    this.setView(next.view);
  }

  /** Escape: first the draft goes, then the tool, then the pick. */
  letGo(): void {
    this.set({ crossHair: null });
    if (this.hasDraft || this.isPicking) this.send({ type: 'cancel' });
    else this.scene.onToolChange('pick');
  }

  pointAt(pointer: { at: ScreenPoint; by: PointerKind; isDown: boolean } | null): void {
    this.pointer = pointer;
    if (pointer && pointer.by !== 'keyboard' && this.snapshot.crossHair) this.set({ crossHair: null });
    if (this.isLoupeHeld) this.refreshDraft();
  }

  holdLoupe(isHeld: boolean): void {
    if (this.isLoupeHeld === isHeld) return;
    this.isLoupeHeld = isHeld;
    if (isHeld) this.wantPixels();
    this.refreshDraft();
  }

  /** Moves the cross-hair by so many screen pixels, but never by less than one pixel of the photo. */
  nudgeCrossHair(dx: number, dy: number): void {
    const { view } = this.snapshot;
    const step = Math.max(1, 1 / view.scale);
    const from = this.snapshot.crossHair ?? this.startOfCrossHair();
    this.placeCrossHair({ x: from.x + dx * step, y: from.y + dy * step });
  }

  pressAtCrossHair(): void {
    const at = this.snapshot.crossHair;
    if (!at) {
      this.placeCrossHair(this.startOfCrossHair());
      return;
    }
    this.send({ type: 'down', at, by: 'keyboard', again: false });
    this.send({ type: 'up', at, by: 'keyboard' });
  }

  zoomAtHand(factor: number): void {
    this.navigate({ type: 'zoom', at: this.handOnScreen(), factor });
  }

  scaleAtHand(to: number): void {
    this.navigate({ type: 'scale', at: this.handOnScreen(), to });
  }

  private handOnScreen(): ScreenPoint {
    const { crossHair, view, size } = this.snapshot;
    if (crossHair) return toScreen(view, crossHair);
    return this.pointer?.at ?? screenPoint(size.width / 2, size.height / 2);
  }

  private startOfCrossHair(): ImagePoint {
    return insidePhoto(toImage(this.snapshot.view, this.handOnScreen()), this.scene.photo);
  }

  private placeCrossHair(to: ImagePoint): void {
    const { view, size } = this.snapshot;
    const at = insidePhoto(to, this.scene.photo);
    this.set({ crossHair: at });
    this.setView(clampView(bringIntoView(view, at, size, crossHairMarginPx), this.scene.photo, size));
    this.send({ type: 'move', at, by: 'keyboard' });
  }

  private startTool(): void {
    this.session = toolNamed(this.scene.tool).start();
    this.refreshDraft();
  }

  private carryOut(effect: Effect): void {
    switch (effect.type) {
      case 'commit':
        this.commit(effect.change);
        return;
      case 'pick':
        this.scene.onPick(effect.markId);
        return;
      case 'pan':
        if (this.pointer?.isDown) this.navigate({ type: 'grab', at: this.pointer.at });
        return;
      case 'fit':
        this.navigate({ type: 'fit' });
        return;
      case 'look-at':
        this.placeCrossHair(effect.at);
        return;
    }
  }

  private commit(change: MarkChange): void {
    this.pending.begin(change, this.scene.marks, this.toolView.marks);
    this.set({ spoken: spokenOf(change) });
    const pointPx = Math.max(1, handPx / this.snapshot.view.scale);
    Promise.resolve(this.scene.onCommit(change, pointPx)).catch(() => this.pending.drop());
  }

  private refreshDraft(): void {
    const draft = this.session.draft(this.toolView);
    const { activeVertex } = this.session;
    const isFineTouch = draft !== null && this.pointer?.by === 'touch' && this.pointer.isDown && !this.isNavigating;
    if (isFineTouch) this.wantPixels();
    const hand =
      draft?.focus ?? this.snapshot.crossHair ?? (this.pointer && toImage(this.snapshot.view, this.pointer.at));
    this.set({ draft, activeVertex, loupeAt: this.isLoupeHeld || isFineTouch ? hand : null });
  }

  private setView(view: View): void {
    const { photo } = this.scene;
    if (sameView(view, this.snapshot.view)) return;
    this.isFitted = sameView(view, fitView(photo, this.snapshot.size));
    this.set({ view, isMoving: true });
    this.marksPicture.follow(this.scene, this.snapshot);
    clearTimeout(this.restTimer);
    this.restTimer = setTimeout(() => this.rest(), restAfterMs);
  }

  private rest(): void {
    this.marksPicture.rest();
    this.set({ isMoving: false });
    this.redrawMarks();
    this.wantPixels();
    this.toldView = this.snapshot.view;
    this.scene.onViewChange?.(this.snapshot.view);
  }

  private wantPixels(): void {
    const { view, size, loupeAt } = this.snapshot;
    const scale = loupeAt || this.isLoupeHeld ? view.scale * 3 : view.scale;
    this.pieces?.want({ ...view, scale: Math.max(view.scale, scale) }, size, window.devicePixelRatio);
  }

  private redrawMarks(): void {
    this.marksPicture.draw(this.scene, this.snapshot);
  }

  private set(part: Partial<StageSnapshot>): void {
    this.snapshot = { ...this.snapshot, ...part };
    for (const listener of this.listeners) listener();
  }
}
