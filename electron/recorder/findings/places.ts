import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Layout } from '../../../shared-lib/model/layout.ts';
import { checkLocation } from '../../../shared-lib/parts/check-location.ts';
import { formatLocation } from '../../../shared-lib/parts/format-location.ts';
import { parseLocation } from '../../../shared-lib/parts/parse-location.ts';
import type { Context } from '../context.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { layoutById, rowToLayout } from '../machines/queries.ts';
import { visitById } from '../visits/queries.ts';
import { locationRows } from './queries.ts';

/** A place in its canonical text, proven to exist on the layout. @throws AppError 'location-malformed', 'location-unknown' */
export const placeOn = (text: string, layout: Layout): string => {
  const location = parseLocation(text);
  checkLocation(location, layout);
  return formatLocation(location);
};

export const visitLayout = ({ db }: Pick<Context, 'db'>, visitId: string) => {
  const visit = visitById(db, visitId);
  if (!visit) throw new AppError('not-found', { record: 'visit', id: visitId });
  const layout = layoutById(db, visit.layout_id);
  if (!layout) throw new Error(`visit ${visitId} has no layout`);
  return { visit, layout: rowToLayout(layout).layout };
};

/** Replaces a finding's places, touching only those that differ. */
export const setPlaces = (
  { db, newId }: Pick<Context, 'db' | 'newId'>,
  writer: RecordWriter,
  findingId: string,
  places: readonly string[],
  layout: Layout,
): void => {
  const wanted = [...new Set(places.map((place) => placeOn(place, layout)))];
  const there = locationRows(db, findingId);
  for (const row of there.slice(wanted.length)) writer.remove('finding_location', row.id);
  wanted.forEach((place, position) => {
    const row = there[position];
    if (row) writer.update('finding_location', row.id, { place });
    else writer.insert('finding_location', { id: newId(), finding_id: findingId, position, place });
  });
};
