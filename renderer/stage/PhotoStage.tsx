import { type Ref, useEffect, useId, useImperativeHandle, useLayoutEffect, useRef, useState } from 'react';
import type { Tag } from '../../shared-lib/geometry/tag-plate.ts';
import type { View } from '../../shared-lib/geometry/viewport.ts';
import type { Mark } from '../../shared-lib/model/mark.ts';
import { readLook } from './look.ts';
import { MarkList, markItemId } from './MarkList.tsx';
import styles from './PhotoStage.module.css';
import { PhotoPieces, type PhotoSources } from './photo/photo-pieces.ts';
import { StageCanvas } from './StageCanvas.tsx';
import { StageStatus } from './StageStatus.tsx';
import { StageController } from './stage-controller.ts';
import type { StageLabel, StageScene } from './stage-scene.ts';
import type { ToolName } from './tools/index.ts';
import type { MarkChange } from './tools/machine.ts';
import { useStageInput } from './use-stage-input.ts';
import { markName, stageWords } from './words.ts';

export interface PhotoStageProps {
  readonly shot: { readonly id: string; readonly digest: string; readonly width: number; readonly height: number };
  readonly sources: PhotoSources;
  readonly marks: readonly Mark[];
  /** By finding id: what the stamped tag shows. */
  readonly tags: ReadonlyMap<string, Tag>;
  readonly tool: ToolName;
  readonly onToolChange: (tool: ToolName) => void;
  readonly picked: string | null;
  readonly onPick: (markId: string | null) => void;
  /** One gesture, one change, one step of undo. A promise that fails takes the drawn change off the stage again. */
  readonly onCommit: (change: MarkChange, pointPx: number) => unknown;
  /** Words at spots of the photo: a size beside its mark, the number of a set point. */
  readonly labels?: readonly StageLabel[] | undefined;
  /** Where to look from when the shot opens, or when another view is handed in; null fits the photo. */
  readonly view?: View | null;
  readonly onViewChange?: (view: View) => void;
  readonly busyText?: string | undefined;
  /** What the photo shows, for those who cannot see it. */
  readonly label?: string;
  readonly nameOf?: (mark: Mark) => string;
  readonly ref?: Ref<StageHand>;
}

/** What a screen may do with the stage's keys. */
export interface StageHand {
  /** The keys go to the stage: arrows move the cross-hair. */
  readonly takeKeys: () => void;
}

/** The photo as large as the window allows, with its marks. Props in, callbacks out; it fetches nothing but pixels. */
export function PhotoStage(props: PhotoStageProps) {
  const { shot, sources, marks, tags, picked, view = null, busyText, label = stageWords.label } = props;
  const scene: StageScene = {
    photo: shot,
    marks,
    tags,
    tool: props.tool,
    picked,
    onToolChange: props.onToolChange,
    onPick: props.onPick,
    onCommit: props.onCommit,
    labels: props.labels,
    onViewChange: props.onViewChange,
  };
  const [controller] = useState(() => new StageController(scene));
  const latest = useRef({ scene, view, sources });
  const stage = useRef<HTMLDivElement>(null);
  const listId = useId();
  useImperativeHandle(props.ref, () => ({ takeKeys: () => stage.current?.focus({ preventScroll: true }) }), []);

  useLayoutEffect(() => {
    latest.current = { scene, view, sources };
    controller.update(scene);
  });
  useLayoutEffect(() => {
    const element = stage.current;
    if (!element) return;
    const measure = () => controller.resize({ width: element.clientWidth, height: element.clientHeight });
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    controller.setLook(readLook(element));
    const theme = new MutationObserver(() => controller.setLook(readLook(element)));
    theme.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme', 'data-size'] });
    const drawAgain = () => controller.drawAgain();
    document.fonts.addEventListener('loadingdone', drawAgain);
    return () => {
      observer.disconnect();
      theme.disconnect();
      document.fonts.removeEventListener('loadingdone', drawAgain);
      controller.close();
    };
  }, [controller]);

  const { screenUrl, originalUrl } = sources;
  const hasRegions = sources.regionUrl !== undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another shot begins anew even where its pixels are the same
  useEffect(() => {
    const photo = { width: shot.width, height: shot.height };
    // Asked through the newest props, so that a screen may hand in a new function at every turn.
    const regionUrl: PhotoSources['regionUrl'] = (part, edge) =>
      latest.current.sources.regionUrl?.(part, edge) ?? Promise.reject(new Error('no regions'));
    const pieces = new PhotoPieces(photo, { screenUrl, originalUrl, ...(hasRegions ? { regionUrl } : {}) }, () =>
      controller.photoChanged(),
    );
    controller.showPhoto(latest.current.scene, latest.current.view, pieces);
    return () => pieces.close();
  }, [controller, shot.id, shot.digest, shot.width, shot.height, screenUrl, originalUrl, hasRegions]);
  useEffect(() => {
    if (view) controller.lookFrom(view);
  }, [controller, view]);
  useStageInput(stage, controller);
  useViewOnElement(stage, controller);

  const nameOf = props.nameOf ?? ((mark: Mark) => markName(mark.shape, tagOf(mark, tags)));
  return (
    <div
      ref={stage}
      className={styles.stage}
      role="application"
      aria-label={label}
      aria-roledescription={stageWords.label}
      aria-describedby={`${listId}-keys`}
      aria-activedescendant={picked === null ? undefined : markItemId(listId, picked)}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: an application is worked by keyboard
      tabIndex={0}
      data-tool={props.tool}
    >
      <div className={styles.canvas} aria-hidden="true">
        <StageCanvas controller={controller} marks={marks} tags={tags} picked={picked} />
      </div>
      <p id={`${listId}-keys`} className={styles.unseen}>
        {stageWords.keys}
      </p>
      <MarkList listId={listId} marks={marks} picked={picked} nameOf={nameOf} />
      <StageStatus controller={controller} busyText={busyText} />
    </div>
  );
}

function tagOf(mark: Mark, tags: ReadonlyMap<string, Tag>): Tag | null {
  return mark.findingId === null ? null : (tags.get(mark.findingId) ?? null);
}

/** Writes where the photo lies onto the stage's element, for whoever has to find a spot of the photo on the screen. */
function useViewOnElement(element: React.RefObject<HTMLElement | null>, controller: StageController): void {
  useEffect(() => {
    let told: View | null = null;
    function tell(): void {
      const { view, size, isMoving, isDrawn } = controller.snapshot;
      const stage = element.current;
      if (!stage) return;
      const photo = controller.pieces?.status(view, size);
      if (view !== told) stage.dataset.view = JSON.stringify(view);
      told = view;
      stage.dataset.moving = String(isMoving);
      stage.dataset.marks = isDrawn ? 'drawn' : 'drawing';
      stage.dataset.photo = photo === undefined || photo.isLoading ? 'loading' : photo.sharpness;
    }
    tell();
    return controller.subscribe(tell);
  }, [element, controller]);
}
