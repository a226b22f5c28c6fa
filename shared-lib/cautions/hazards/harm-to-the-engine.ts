import { type Caution, commonPractice } from '../caution.ts';

export const harmToTheEngine = [
  {
    id: 'CAU-31',
    word: 'NOTICE',
    hazard: 'Engine runs blind',
    text: 'Temperature or oil-pressure gauge does not work: overheating or low oil pressure will not be seen. Fit temporary mechanical gauges.',
    audience: 'owner',
    sources: [commonPractice],
    calledBy: [{ by: 'finding', at: { parts: ['INST/TEMP', 'INST/OILP'] }, defects: ['inop'], leftOpen: true }],
  },
  {
    id: 'CAU-35',
    word: 'NOTICE',
    hazard: 'Running destroys the engine',
    text: 'Do not start. Each minute of running with coolant in oil or no oil pressure can destroy bearings and crankshaft.',
    audience: 'both',
    sources: [commonPractice],
    calledBy: [
      { by: 'finding', at: { classes: ['engine', 'coolant', 'cooling'] }, defects: ['mixing'] },
      { by: 'finding', at: { classes: ['engine'] }, dueNow: true },
      { by: 'sheet', sheets: ['MS-27'], verdicts: ['beyond'] },
    ],
  },
] as const satisfies readonly Caution[];
