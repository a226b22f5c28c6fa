import { useMemo, useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { defectOf } from '../../shared-lib/defects/index.ts';
import type { Tag } from '../../shared-lib/geometry/tag-plate.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { wordsOf } from '../api/client.ts';
import { go, replacePlace } from '../app/place.ts';
import { FindingPane } from '../findings/FindingPane.tsx';
import { FilmStrip } from '../stage/FilmStrip.tsx';
import { PhotoStage } from '../stage/PhotoStage.tsx';
import { ToolRail } from '../stage/ToolRail.tsx';
import type { ToolName } from '../stage/tools/index.ts';
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
  readonly findingId: string | undefined;
}

/** The photo as large as the window allows, the visit's shots along its edge, the finding's card beside. */
export function PhotosPage({ record, shotId, findingId }: PhotosPageProps) {
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
  return <Stage key={record.visit.id} record={record} shots={shots} shot={shot} findingId={findingId} />;
}

interface StageProps {
  readonly record: VisitRecord;
  readonly shots: readonly Shot[];
  readonly shot: Shot;
  readonly findingId: string | undefined;
}

function Stage({ record, shots, shot, findingId }: StageProps) {
  const visitId = record.visit.id;
  const [tool, setTool] = useState<ToolName>('pick');
  const [picked, setPicked] = useState<string | null>(null);
  const marks = useMemo(() => record.marks.filter((mark) => mark.shotId === shot.id), [record.marks, shot.id]);
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
  const at = { name: 'visit', visitId, page: 'photos' } as const;
  const showShot = (id: string) => {
    setPicked(null);
    replacePlace({ ...at, shotId: id, ...(findingId === undefined ? {} : { findingId }) });
  };
  const openFinding = (id: string | undefined) =>
    go({ ...at, shotId: shot.id, ...(id === undefined ? {} : { findingId: id }) });
  const pick = (markId: string | null) => {
    setPicked(markId);
    const belongsTo = marks.find(({ id }) => id === markId)?.findingId;
    if (belongsTo) openFinding(belongsTo);
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
  const finding = record.findings.find(({ id }) => id === findingId);
  return (
    <div className={styles.panes}>
      <ToolRail tool={tool} onToolChange={setTool} />
      <div className={styles.stage}>
        <PhotoStage
          shot={shot}
          sources={sources}
          marks={marks}
          tags={tags}
          tool={tool}
          onToolChange={setTool}
          picked={picked}
          onPick={pick}
          onCommit={changes.commit}
          label={`Photo ${shot.sequence}${shot.caption === '' ? '' : `: ${shot.caption}`}`}
        />
        {changes.error !== null && (
          <div className={styles.error}>
            <ErrorNote {...wordsOf(changes.error)} />
          </div>
        )}
        <FilmStrip shots={films} picked={shot.id} onPick={showShot}>
          <ShotCaption shot={shot} layout={record.layout.layout} />
        </FilmStrip>
      </div>
      {finding === undefined ? (
        <ShotPane record={record} shot={shot} onMarkWith={setTool} onFinding={openFinding} />
      ) : (
        <FindingPane
          record={record}
          findingId={finding.id}
          shotId={shot.id}
          onClose={() => openFinding(undefined)}
          onMark={() => setTool(defectOf(finding.defect)?.mark ?? 'area')}
        />
      )}
    </div>
  );
}

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
