import type { FindingState } from '../model/finding.ts';

export interface StateWords {
  readonly state: FindingState;
  readonly label: string;
  readonly sense: string;
  /** How a report opens the sentence about a finding in this state. */
  readonly opening: string;
}

/** Four states, never merged. */
export const states: readonly StateWords[] = [
  {
    state: 'confirmed',
    label: 'Confirmed',
    sense: 'Seen or measured on this part, by a method that can show it, with a photo or a reading.',
    opening: 'Found',
  },
  {
    state: 'suspected',
    label: 'Suspected',
    sense: 'The evidence fits; it is not proven.',
    opening: 'Fits, not proven',
  },
  {
    state: 'not-examined',
    label: 'Not examined',
    sense: 'Nobody looked. The reason is written down.',
    opening: 'Not looked at',
  },
  {
    state: 'none-found',
    label: 'Examined, none found',
    sense: 'Looked for, by a named method, and not found. The method says what it can miss.',
    opening: 'Looked for and not found',
  },
];

export function stateWords(state: FindingState): StateWords {
  const found = states.find((words) => words.state === state);
  if (found === undefined) throw new RangeError(`no state ${state}`);
  return found;
}
