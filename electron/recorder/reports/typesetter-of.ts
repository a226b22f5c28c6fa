import type { Context } from '../context.ts';
import { Typesetter } from './typeset.ts';

/** The typesetter of this data folder, opened at the first report and kept warm. */
export const typesetterOf = ({ services }: Pick<Context, 'services'>): Typesetter =>
  services.get('typesetter', () => new Typesetter());
