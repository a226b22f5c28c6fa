import { AppError } from '../contract/errors.ts';
import type { Layout } from '../model/layout.ts';
import { checkLocation } from './check-location.ts';
import { parseLocation } from './parse-location.ts';

function exists(text: string, layout: Layout): boolean {
  try {
    checkLocation(parseLocation(text), layout);
    return true;
  } catch (error) {
    if (error instanceof AppError) return false;
    throw error;
  }
}

/**
 * The places that a changed layout would leave without a part to stand on.
 *
 * @param locationTexts  every place the machine's record uses
 * @returns  those that do not exist on the new layout, each once, in the order given
 */
export function layoutOrphans(locationTexts: readonly string[], newLayout: Layout): string[] {
  return [...new Set(locationTexts)].filter((text) => !exists(text, newLayout));
}
