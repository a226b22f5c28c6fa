import type { Layout } from '../../shared-lib/model/layout.ts';

const arrangementWords = { inline: 'in line', V: 'in a V', opposed: 'opposed' } as const;

/** `4 in line, diesel`. */
export function engineWords({ engine }: Layout): string {
  const arrangement = engine.cylinders === 1 ? 'single' : arrangementWords[engine.arrangement];
  const count = engine.cylinders === 1 ? '' : `${engine.cylinders} `;
  return `${count}${arrangement}, ${engine.fuel}`;
}

const schemeWords = { 'free-first': 'at the fan end', 'drive-first': 'at the flywheel', list: 'by its list' } as const;

/** Where cylinder 1 stands. */
export function firstCylinderWords({ numbering }: Layout): string {
  return schemeWords[numbering.scheme];
}

/** How the engine turns, seen from the fan end. */
export function turnsWords({ engine }: Layout): string {
  return engine.rotation === 'CW' ? 'clockwise' : 'counter-clockwise';
}
