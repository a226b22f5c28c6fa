import { useState } from 'react';
import { FilmStrip } from '../../../../renderer/stage/FilmStrip.tsx';
import { PhotoStage } from '../../../../renderer/stage/PhotoStage.tsx';
import { ToolRail } from '../../../../renderer/stage/ToolRail.tsx';
import type { ToolName } from '../../../../renderer/stage/tools/index.ts';
import type { MarkChange } from '../../../../renderer/stage/tools/machine.ts';
import type { Mark } from '../../../../shared-lib/model/mark.ts';
import { sceneFromAddress } from './scene.ts';

const scene = sceneFromAddress();
const regionUrl = (part: { x: number; y: number; width: number; height: number }, edge: number) =>
  `/region?${new URLSearchParams({ photo: scene.screenUrl, x: String(part.x), y: String(part.y), width: String(part.width), height: String(part.height), edge: String(edge) })}`;

/** The stage as a screen composes it, over marks kept in memory. */
export function StagePage() {
  const [marks, setMarks] = useState<readonly Mark[]>(scene.marks);
  const [tool, setTool] = useState<ToolName>('pick');
  const [picked, setPicked] = useState<string | null>(null);
  const [shot, setShot] = useState('shot');
  const shots = Array.from({ length: 30 }, (_, index) => ({
    id: index === 3 ? 'shot' : `shot-${index}`,
    sequence: index + 11,
    thumbnailUrl: scene.screenUrl,
    caption: '',
  }));
  return (
    <div className="bench">
      <div className="rail">
        <ToolRail tool={tool} onToolChange={setTool} isScaling={false} onScale={() => {}} />
      </div>
      <PhotoStage
        shot={{ id: 'shot', digest: '0'.repeat(64), ...scene.photo }}
        sources={{
          screenUrl: scene.screenUrl,
          originalUrl: scene.originalUrl,
          ...(scene.hasRegions ? { regionUrl } : {}),
        }}
        marks={marks}
        tags={scene.tags}
        tool={tool}
        onToolChange={setTool}
        picked={picked}
        onPick={setPicked}
        onCommit={(change) => setMarks((before) => changed(before, change))}
      />
      <FilmStrip shots={shots} picked={shot} onPick={setShot}>
        Cylinder head, fire face seen from below
      </FilmStrip>
      <div className="side">
        <output id="picked">{picked}</output>
        <output id="marks" hidden>
          {JSON.stringify(marks.slice(-8))}
        </output>
        <output id="first" hidden>
          {JSON.stringify((marks.find(({ id }) => id === picked) ?? marks[0])?.points[0])}
        </output>
        <output id="count">{marks.length}</output>
      </div>
    </div>
  );
}

let added = 0;

function changed(marks: readonly Mark[], change: MarkChange): readonly Mark[] {
  switch (change.type) {
    // Nothing follows a line here: no recorder stands behind this page.
    case 'trace':
    case 'grow':
    case 'retrace':
      return marks;
    case 'add':
      added += 1;
      return [
        ...marks,
        {
          id: `new-${added}`,
          shotId: 'shot',
          findingId: null,
          shape: change.shape,
          points: change.points,
          role: 'finding',
          origin: { by: 'hand' },
          calibrationId: null,
          tagAt: null,
          note: '',
        },
      ];
    case 'change':
      return marks.map((mark) =>
        mark.id === change.markId
          ? { ...mark, points: change.points ?? mark.points, tagAt: change.tagAt ?? mark.tagAt }
          : mark,
      );
    case 'remove':
      return marks.filter((mark) => mark.id !== change.markId);
  }
}
