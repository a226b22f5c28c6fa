import { z } from 'zod';
import { type Person, Person as PersonSchema, type Shop, Shop as ShopSchema } from '../model/shop.ts';
import { change, query } from './operation.ts';

export interface AppState {
  /** False until the mechanic has chosen the demo shop or an empty one. */
  readonly started: boolean;
  readonly shop: Shop;
  readonly people: readonly Person[];
  /** The person whose name the next journal entries carry. */
  readonly personId: string | null;
  readonly dataFolder: string;
  /** Set while the quick check after the start has found something. */
  readonly damage: string | null;
}

export const shopOperations = {
  'app.state': query<AppState>()(z.strictObject({})),
  /** Fills an empty folder with the made-up shop, or begins an empty one. */
  'app.begin': change<AppState>()(z.strictObject({ with: z.enum(['demo', 'empty']) })),
  'shop.change': change<Shop>()(ShopSchema.partial()),
  'person.add': change<Person>()(PersonSchema.pick({ name: true, trade: true })),
  'person.change': change<Person>()(PersonSchema.omit({ id: true }).partial().extend({ id: z.string() })),
  /** The chip: who is working now. */
  'person.switch': change<AppState>()(z.strictObject({ id: z.string() })),
};
