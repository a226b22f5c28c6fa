import type { AppState } from '../../../shared-lib/contract/shop.ts';
import type { Context, Handlers } from '../context.ts';
import { people, rowToPerson, rowToShop, shopRow } from './queries.ts';

const appState = ({ db, dataFolder, damage }: Context): AppState => {
  const row = shopRow(db);
  return {
    started: row.started === 1,
    shop: rowToShop(row),
    people: people(db),
    personId: row.person_id,
    dataFolder,
    damage: damage(),
  };
};

export const shopHandlers: Handlers = {
  'app.state': { read: (context) => appState(context) },
  'app.begin': {
    outside: async (context, input) => {
      if (input.with === 'demo') {
        const { fillWithDemo } = await import('../scenario/demo.ts');
        await fillWithDemo(context);
      }
      context.mutate((writer) => writer.update('shop', '1', { started: 1 }));
      return appState(context);
    },
  },
  'shop.change': {
    change: ({ db }, writer, { timeZone, statementWords, ...input }) => {
      writer.update('shop', '1', { ...input, time_zone: timeZone, statement_words: statementWords });
      return rowToShop(shopRow(db));
    },
  },
  'person.add': {
    change: ({ db, newId }, writer, { name, trade }) => {
      const row = { id: newId(), name, trade, here: 1 } as const;
      writer.insert('person', row);
      // The first person to be named is the one at the bench.
      if (shopRow(db).person_id === null) writer.update('shop', '1', { person_id: row.id });
      return rowToPerson(row);
    },
  },
  'person.change': {
    change: (_context, writer, { id, here, ...input }) => {
      writer.update('person', id, { ...input, here: here === undefined ? undefined : here ? 1 : 0 });
      return rowToPerson(writer.row('person', id) as never);
    },
  },
  'person.switch': {
    change: (context, writer, { id }) => {
      writer.row('person', id);
      writer.update('shop', '1', { person_id: id });
      return appState(context);
    },
  },
};
