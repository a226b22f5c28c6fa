/** From the most serious: will kill or maim; could kill or maim; could hurt; no injury. Meanings of ANSI Z535.4. */
export const signalWords = ['DANGER', 'WARNING', 'CAUTION', 'NOTICE'] as const;
export type SignalWord = (typeof signalWords)[number];

/** Only a notice goes without the safety alert symbol: it speaks of no injury. */
export function hasAlertSymbol(word: SignalWord): boolean {
  return word !== 'NOTICE';
}
