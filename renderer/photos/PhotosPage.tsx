import { useEffect, useMemo, useRef, useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { defectOf } from '../../shared-lib/defects/index.ts';
import type { Tag } from '../../shared-lib/geometry/tag-plate.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { wordsOf } from '../api/client.ts';
import { useAppState } from '../app/app-state.ts';
import { go, replacePlace } from '../app/place.ts';
import { EarlierLink } from '../compare/EarlierLink.tsx';
import { ThenAndNowPage } from '../compare/ThenAndNowPage.tsx';
import { FindingPane } from '../findings/FindingPane.tsx';
import { CardOffer } from '../measuring/CardOffer.tsx';
import { referenceName, sizeLabels } from '../measuring/labels.ts';
import { ScaleLine } from '../measuring/ScaleLine.tsx';
import { ScalePane } from '../measuring/ScalePane.tsx';
import type { ScaleWay } from '../measuring/scale-draft.ts';
import { toolOfWay } from '../measuring/scale-on-stage.ts';
import { changeOnPhoto, labelsOnStraight, marksOnStraight } from '../measuring/straight.ts';
import { useScale } from '../measuring/use-scale.ts';
import { useStraight } from '../measuring/use-straight.ts';
import { FilmStrip } from '../stage/FilmStrip.tsx';
import { PhotoStage, type StageHand } from '../stage/PhotoStage.tsx';
import { ToolRail } from '../stage/ToolRail.tsx';
import type { ToolName } from '../stage/tools/index.ts';
import type { MarkChange } from '../stage/tools/machine.ts';
import { stageWords } from '../stage/words.ts';
import { EmptyPlace } from '../ui/EmptyPlace.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import styles from './PhotosPage.module.css';
import { photoSources } from './photo-sources.ts';
import { ShotCaption } from './ShotCaption.tsx';
import { ShotPane } from './ShotPane.tsx';
import { TakePhotosLine } from './TakePhotosLine.tsx';
import { useMarkChanges } from './use-mark-changes.ts';

interface PhotosPageProps {
  readonly record: VisitRecord;
  readonly shotId: string | undefined;
  /** The earlier photo that lies under it, where then and now are compared. */
  readonly thenShotId: string | undefined;
  readonly findingId: string | undefined;
}

/** The photo as large as the window allows, the visit's shots along its edge, the finding's card beside. */
export function PhotosPage({ record, shotId, thenShotId, findingId }: PhotosPageProps) {
  const shots = useMemo(() => record.shots.filter(({ binned }) => !binned), [record.shots]);
  const shot = shots.find(({ id }) => id === shotId) ?? shots[0];
  if (shot === undefined) {
    return (
      <div className={styles.empty}>
        <EmptyPlace title="No photo yet" actions={<TakePhotosLine visitId={record.visit.id} />}>
          <p>Photos of this visit stand here, each with its marks. They are copied in as they are and never changed.</p>
        </EmptyPlace>
      </div>
    );
  }
  if (thenShotId !== undefined) {
    return <ThenAndNowPage key={`${shot.id} ${thenShotId}`} record={record} shot={shot} earlierShotId={thenShotId} />;
  }
  return <Stage key={record.visit.id} record={record} shots={shots} shot={shot} findingId={findingId} />;
}

interface StageProps {
  readonly record: VisitRecord;
  readonly shots: readonly Shot[];
  readonly shot: Shot;
  readonly findingId: string | undefined;
}

function Stage({ record, shots, shot, findingId }: StageProps) {
  const { shop } = useAppState();
  const visitId = record.visit.id;
  const [tool, setTool] = useState<ToolName>('pick');
  const [picked, setPicked] = useState<string | null>(null);
  const [isScaling, setScaling] = useState(false);
  const [straightId, setStraightId] = useState<string | null>(null);
  const stage = useRef<StageHand>(null);
  const takeKeys = () => stage.current?.takeKeys();
  useEffect(() => {
    // Come by a key, the keys are the stage's; whoever is somewhere already stays there.
    if (document.activeElement === document.body) stage.current?.takeKeys();
  }, []);
  const scale = useScale(record, shot, isScaling);
  const planes = useMemo(() => record.calibrations.filter(({ shotId }) => shotId === shot.id), [record, shot.id]);
  const straightPlane = isScaling ? null : (planes.find(({ id }) => id === straightId) ?? null);
  const { straight, isMaking, error: straightError } = useStraight(straightPlane);
  const photoMarks = useMemo(() => record.marks.filter((mark) => mark.shotId === shot.id), [record.marks, shot.id]);
  const tags = useMemo(() => tagsOf(record), [record]);
  const sources = useMemo(() => photoSources(shot), [shot]);
  const films = useMemo(
    () =>
      shots.map(({ id, sequence, digest, caption }) => ({
        id,
        sequence,
        caption,
        thumbnailUrl: `photo://thumb/${digest}`,
      })),
    [shots],
  );
  const marks = useMemo(() => {
    if (isScaling) return scale.marks;
    return straight ? marksOnStraight(photoMarks, straight.mapping) : photoMarks;
  }, [isScaling, scale.marks, straight, photoMarks]);
  const labels = useMemo(() => {
    if (isScaling) return scale.labels;
    const size = sizeLabels(record, picked, shop.units);
    return straight ? labelsOnStraight(size, straight.mapping) : size;
  }, [isScaling, scale.labels, record, picked, shop.units, straight]);

  const at = { name: 'visit', visitId, page: 'photos' } as const;
  const showShot = (id: string) => {
    setPicked(null);
    replacePlace({ ...at, shotId: id, ...(findingId === undefined ? {} : { findingId }) });
  };
  const openFinding = (id: string | undefined) =>
    go({ ...at, shotId: shot.id, ...(id === undefined ? {} : { findingId: id }) });
  const pick = (markId: string | null) => {
    setPicked(markId);
    const belongsTo = photoMarks.find(({ id }) => id === markId)?.findingId;
    if (belongsTo) openFinding(belongsTo);
  };
  const setWay = (way: ScaleWay) => {
    setPicked(null);
    setScaling(true);
    scale.setDraft((now) => ({ ...now, way }));
    setTool(way === 'known-length' && scale.draft.points[way].length === 2 ? 'pick' : toolOfWay[way]);
  };
  const takeScale = () => {
    setWay(scale.draft.way);
    takeKeys();
  };
  const leaveScale = (next: ToolName = 'pick') => {
    setPicked(null);
    setScaling(false);
    setTool(next);
    takeKeys();
  };
  /** While the scale is set, picking and its own tool work on it; any other tool means a mark again. */
  const takeTool = (next: ToolName) => {
    if (isScaling && next !== 'pick' && next !== toolOfWay[scale.draft.way]) leaveScale(next);
    else setTool(next);
    takeKeys();
  };
  const changes = useMarkChanges({
    record,
    shot,
    findingId,
    onMark: (mark) => {
      setPicked(mark.id);
      setTool('pick');
      if (mark.findingId !== null) openFinding(mark.findingId);
    },
    onGone: () => setPicked(null),
  });
  const commit = (change: MarkChange, pointPx: number): unknown => {
    if (isScaling) {
      scale.commit(change, pointPx);
      if (scale.draft.way === 'known-length' && change.type === 'add') setTool('pick');
      if (change.type === 'remove') setPicked(null);
      return undefined;
    }
    if (!straight) return changes.commit(change, pointPx);
    const onPhoto = changeOnPhoto(change, straight.mapping);
    return onPhoto
      ? changes.commit(onPhoto, pointPx * straight.mapping.photoPx)
      : Promise.reject(new Error('out of sight'));
  };
  const finding = record.findings.find(({ id }) => id === findingId);
  const error = changes.error ?? straightError;
  const busyText = scale.isFinding
    ? 'Looking for the card'
    : changes.finding
      ? findingWords[changes.finding]
      : isMaking
        ? 'Straightening the face'
        : undefined;
  return (
    <div className={styles.panes}>
      <ToolRail
        tool={isScaling ? null : tool}
        onToolChange={takeTool}
        isScaling={isScaling}
        onScale={() => (isScaling ? leaveScale() : takeScale())}
      />
      <div className={styles.stage}>
        <PhotoStage
          ref={stage}
          shot={straight?.shot ?? shot}
          sources={straight?.sources ?? sources}
          marks={marks}
          tags={isScaling ? noTags : tags}
          labels={labels}
          tool={tool}
          onToolChange={takeTool}
          picked={picked}
          onPick={pick}
          onCommit={commit}
          busyText={busyText}
          label={`Photo ${shot.sequence}${straight ? `, ${straight.plane.plane} straightened` : ''}${shot.caption === '' ? '' : `: ${shot.caption}`}`}
          {...(isScaling ? { nameOf: referenceName } : {})}
        />
        {error !== null && (
          <div className={styles.error}>
            <ErrorNote {...wordsOf(error)} />
          </div>
        )}
        <FilmStrip shots={films} picked={shot.id} onPick={showShot}>
          <ShotCaption shot={shot} layout={record.layout.layout} />
          <ScaleLine planes={planes} straight={straightPlane?.id ?? null} onStraight={setStraightId} />
          <EarlierLink shotId={shot.id} onOpen={(thenShotId) => go({ ...at, shotId: shot.id, thenShotId })} />
        </FilmStrip>
      </div>
      {isScaling ? (
        <ScalePane
          record={record}
          shot={shot}
          scale={scale}
          onWay={setWay}
          onToPhoto={takeKeys}
          onStraight={(id) => {
            leaveScale();
            setStraightId(id);
          }}
          onClose={() => leaveScale()}
          offer={<CardOffer scale={scale} />}
        />
      ) : finding === undefined ? (
        <ShotPane record={record} shot={shot} onMarkWith={takeTool} onScale={takeScale} onFinding={openFinding} />
      ) : (
        <FindingPane
          record={record}
          findingId={finding.id}
          shotId={shot.id}
          onClose={() => {
            openFinding(undefined);
            takeKeys();
          }}
          onMark={() => takeTool(defectOf(finding.defect)?.mark ?? 'area')}
        />
      )}
    </div>
  );
}

const findingWords = { line: stageWords.tracing, outline: stageWords.growing } as const;
const noTags: ReadonlyMap<string, Tag> = new Map();

/** What each finding's stamped tag shows on this visit's photos. */
function tagsOf(record: VisitRecord): ReadonlyMap<string, Tag> {
  const lines = new Map(record.standing.lines.map((line) => [line.findingId, line]));
  return new Map(
    record.findings.map(({ id, number, state }) => {
      const line = lines.get(id);
      return [id, { number, tier: line?.tier ?? 4, state: line?.state ?? state }];
    }),
  );
}
