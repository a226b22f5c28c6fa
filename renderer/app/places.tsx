import { FloorPlace } from '../machines/FloorPlace.tsx';
import { LaterPlace } from './LaterPlace.tsx';
import { laterCode } from './later-code.ts';
import { benchPanel, keyHelp } from './later-panels.ts';
import type { Place } from './place.ts';

// The floor is where the program opens; what lies behind it comes while the floor is looked over.
const machine = laterCode(async () => (await import('../machines/MachinePlace.tsx')).MachinePlace);
const takeIn = laterCode(async () => (await import('../machines/TakeInPlace.tsx')).TakeInPlace);
const visitHeader = laterCode(async () => (await import('./VisitHeader.tsx')).VisitHeader);
const visit = laterCode(async () => (await import('../visits/VisitPlace.tsx')).VisitPlace);
const setup = laterCode(async () => (await import('./SetupPlace.tsx')).SetupPlace);

/** Fetches the code of every other place and side sheet, once the first screen stands. */
export function fetchPlaces(): void {
  for (const { fetch } of [machine, visitHeader, visit, takeIn, setup, keyHelp, benchPanel]) {
    // A place that cannot be fetched now is fetched when it is gone to, and says then what is wrong.
    fetch().catch(() => undefined);
  }
}

/** Draws the place where the window stands. Each has a key: without one React takes one place's component for the next. */
export function PlaceView({ place }: { readonly place: Place }) {
  switch (place.name) {
    case 'floor':
      return <FloorPlace />;
    case 'take-in':
      return <LaterPlace key="take-in" of={takeIn} with={{}} />;
    case 'machine':
      return <LaterPlace key={place.machineId} of={machine} with={{ machineId: place.machineId }} />;
    case 'visit':
      return (
        <>
          <LaterPlace key="header" of={visitHeader} with={{ place }} />
          <LaterPlace
            key={place.visitId}
            of={visit}
            with={{
              visitId: place.visitId,
              page: place.page,
              shotId: place.shotId,
              thenShotId: place.thenShotId,
              findingId: place.findingId,
              choiceId: place.choiceId,
              sheet: { id: place.sheet, at: place.at, readingId: place.readingId },
            }}
          />
        </>
      );
    case 'setup':
      return <LaterPlace key="setup" of={setup} with={{}} />;
  }
}
