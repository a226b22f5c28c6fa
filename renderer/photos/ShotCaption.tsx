import type { Layout } from '../../shared-lib/model/layout.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';
import { momentWords } from './moment-words.ts';

/** Part, number and time of the photo on the stage. */
export function ShotCaption({ shot, layout }: { readonly shot: Shot; readonly layout: Layout }) {
  const seenFrom = shot.seenFrom === '' ? '' : ` seen from ${shot.seenFrom}`;
  return (
    <span>
      <strong>{shot.component === null ? 'Part not said' : speakComponent(shot.component, layout)}</strong>
      {seenFrom}, photo {shot.sequence}, {momentWords(shot)}
      {shot.remark !== null && `, ${shot.remark}`}
    </span>
  );
}
