import type { Context } from '../context.ts';
import { Measurer } from './measurer.ts';

/** The measuring child of this data folder, started when first asked for. */
export const measurerOf = ({ services }: Pick<Context, 'services'>): Measurer =>
  services.get('measurer', () => new Measurer());
