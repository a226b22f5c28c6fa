import type { Person, Shop } from '../../../shared-lib/model/shop.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';

export const rowToPerson = (row: Tables['person']): Person => ({
  id: row.id,
  name: row.name,
  trade: row.trade,
  here: row.here === 1,
});

export const rowToShop = (row: Tables['shop']): Shop => ({
  name: row.name,
  address: row.address,
  phone: row.phone,
  units: row.units,
  paper: row.paper,
  timeZone: row.time_zone,
  ...(row.statement_words === '' ? {} : { statementWords: row.statement_words }),
});

/** The shop's one row; there from the moment the folder is made. */
export const shopRow = (db: ReadableDb): Tables['shop'] => {
  const row = db.first(build.selectFrom('shop').selectAll().where('id', '=', 1));
  if (!row) throw new Error('the shop has no row');
  return row;
};

export const people = (db: ReadableDb): Person[] =>
  db.all(build.selectFrom('person').selectAll().orderBy('name')).map(rowToPerson);
