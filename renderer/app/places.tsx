import { FloorPlace } from '../machines/FloorPlace.tsx';
import { MachinePlace } from '../machines/MachinePlace.tsx';
import { TakeInPlace } from '../machines/TakeInPlace.tsx';
import { VisitPlace } from '../visits/VisitPlace.tsx';
import type { Place } from './place.ts';
import { SetupPlace } from './SetupPlace.tsx';
import { VisitHeader } from './VisitHeader.tsx';

/** Draws the place where the window stands. */
export function PlaceView({ place }: { readonly place: Place }) {
  switch (place.name) {
    case 'floor':
      return <FloorPlace />;
    case 'take-in':
      return <TakeInPlace />;
    case 'machine':
      return <MachinePlace key={place.machineId} machineId={place.machineId} />;
    case 'visit':
      return (
        <>
          <VisitHeader place={place} />
          <VisitPlace
            key={place.visitId}
            visitId={place.visitId}
            page={place.page}
            shotId={place.shotId}
            findingId={place.findingId}
            choiceId={place.choiceId}
            sheet={{ id: place.sheet, at: place.at, readingId: place.readingId }}
          />
        </>
      );
    case 'setup':
      return <SetupPlace />;
  }
}
