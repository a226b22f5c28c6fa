import {
  ArrivalPhoto,
  arrivalViews,
  EarlierWork,
  FluidReceived,
  fluidKinds,
  type Intake,
} from '../../../shared-lib/model/intake.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, type Param } from '../database/query.ts';

export const earlierWorkRows = all((visitId: Param<string>) =>
  build.selectFrom('earlier_work').selectAll().where('visit_id', '=', visitId).orderBy('position'),
);

export const fluidRows = all((visitId: Param<string>) =>
  build.selectFrom('fluid_received').selectAll().where('visit_id', '=', visitId),
);

export const arrivalRows = all((visitId: Param<string>) =>
  build.selectFrom('arrival_photo').selectAll().where('visit_id', '=', visitId),
);

/** A photo in the bin shows nothing; taken out again it shows what it did. */
const arrivalShown = all((visitId: Param<string>) =>
  build
    .selectFrom('arrival_photo')
    .innerJoin('shot', 'shot.id', 'arrival_photo.shot_id')
    .selectAll('arrival_photo')
    .where('arrival_photo.visit_id', '=', visitId)
    .where('shot.binned', '=', 0),
);

export const intakeOf = (db: ReadableDb, visitId: string): Intake => ({
  earlierWork: earlierWorkRows(db, visitId).map(({ id, what, place, did, by_whom, when_done }) =>
    EarlierWork.parse({ id, what, place, did, byWhom: by_whom, whenDone: when_done }),
  ),
  fluids: fluidRows(db, visitId)
    .map(({ id, fluid, level, look, added }) => FluidReceived.parse({ id, fluid, level, look, added }))
    .toSorted((a, b) => fluidKinds.indexOf(a.fluid) - fluidKinds.indexOf(b.fluid)),
  photos: arrivalShown(db, visitId)
    .map(({ id, view, shot_id }) => ArrivalPhoto.parse({ id, view, shotId: shot_id }))
    .toSorted((a, b) => arrivalViews.indexOf(a.view) - arrivalViews.indexOf(b.view)),
});

/** Whether anything was written down of how it was received: a report is silent of it else. */
export const saysAnythingOfIntake = ({ earlierWork, fluids, photos }: Intake): boolean =>
  [earlierWork, fluids, photos].some((each) => each.length > 0);
