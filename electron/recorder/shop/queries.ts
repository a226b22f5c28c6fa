import type { Person, Shop } from '../../../shared-lib/model/shop.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, type Param, run } from '../database/query.ts';
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

/** The folder's own first row, before anybody has done anything: it is nobody's change. Later it does nothing. */
export const beginShop = run((timeZone: Param<string>) =>
  build
    .insertInto('shop')
    .values({
      id: 1,
      name: '',
      address: '',
      phone: '',
      units: 'metric',
      paper: 'a4',
      time_zone: timeZone,
      started: 0,
      person_id: null,
      statement_words: '',
    })
    .onConflict((conflict) => conflict.doNothing()),
);

const rowOfShop = first(() => build.selectFrom('shop').selectAll().where('id', '=', 1));

/** The shop's one row; there from the moment the folder is made. */
export const shopRow = (db: ReadableDb): Tables['shop'] => {
  const row = rowOfShop(db);
  if (!row) throw new Error('the shop has no row');
  return row;
};

const personRows = all(() => build.selectFrom('person').selectAll().orderBy('name'));

export const people = (db: ReadableDb): Person[] => personRows(db).map(rowToPerson);
