/** Work that is done at the bench, or that a choice needs: what a caution can stand before. Words follow 'before'. */
export const workSteps = {
  'lift-off': 'lifting off',
  'open-engine': 'opening the engine',
  'open-hydraulic': 'opening the hydraulics',
  'open-fuel': 'opening the fuel system',
  'drain-coolant': 'draining the coolant',
  'pressure-test': 'the pressure test',
  clean: 'cleaning',
  hone: 'honing',
  grind: 'grinding',
  'core-plug': 'driving core plugs',
  weld: 'welding',
  'wheel-off': 'taking the wheel off',
  electrics: 'electrical work',
  battery: 'work on the battery',
  spring: 'taking springs out',
  'grease-tensioner': 'slackening the grease tensioner',
  run: 'running the engine',
  'run-indoors': 'running the engine indoors',
  climb: 'climbing up',
} as const;
export type WorkStepKind = keyof typeof workSteps;

export interface WorkStep {
  readonly step: WorkStepKind;
  /** A place of the location grammar, where the work has one. */
  readonly at: string | null;
}
