/** Lines that are named by what flows in them instead of the actuator they serve. */
export const lineWords = ['suction', 'pressure', 'return', 'pilot', 'drain', 'charge'] as const;

/** Functions a machine may have without naming them among its working hydraulics. */
export const standingFunctions = ['steer', 'brake'] as const;

const spokenFunctions: ReadonlyMap<string, string> = new Map([['steer', 'steering']]);

/** A function word before a name: `boom hose`, `steering cylinder`. */
export function speakFunction(word: string): string {
  return spokenFunctions.get(word) ?? word;
}
