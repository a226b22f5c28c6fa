import type { FindingState, MethodCode } from '../model/finding.ts';

/** How a method found a thing, as one word or two: `Found, seen and tried.` */
export const methodDeeds: Readonly<Record<MethodCode, string>> = {
  V: 'seen',
  MG: 'seen under a magnifier',
  PT: 'shown by penetrant',
  MT: 'shown by magnetic particle',
  UT: 'wall measured',
  PR: 'shown under pressure',
  VAC: 'shown under vacuum',
  M: 'measured',
  F: 'tried',
  E: 'measured live',
  LAB: 'shown by a sample',
};

/** The certainty column of the list. */
export const certaintyWords: Readonly<Record<FindingState | 'observation', string>> = {
  confirmed: 'Found',
  suspected: 'Fits, not proven',
  'not-examined': 'Not looked at',
  'none-found': 'Looked for, not found',
  observation: 'Observed',
};

export const reportWords = {
  heading: 'Condition report',
  draftMark: 'Draft, not issued',
  draftFoot: 'Draft, not issued. No report number.',
  issued: 'Report {number}, revision {revision}',
  footRight: 'page {page} of {pages}',
  photoMissing: 'This photo is not in the store of the program.',
  noPhoto: 'No photo shows this.',
  noPhotoReading: 'No photo; a reading shows this.',
  placeNotSaid: 'Place not said yet',
  titleNotSaid: 'Not named yet',
  notSaid: 'Not said yet.',
  commonly: 'what commonly follows:',
  mended: 'Mended in this visit',
  was: 'Was:',
  hoursNotRead: 'not read',
  partOfPhoto: 'Part of the photo.',
  plusMinus:
    'The number after ± is how far off the measuring can be: 19 times in 20 the true size lies within it (expanded uncertainty, 95 %).',
} as const;

/** What the record is and what it is not. Wording follows the handbook's fair report and limits of inspection. */
export const disclaimer: readonly string[] = [
  'This is the record of a mechanic’s inspection of one machine, on the date and at the hours shown. It covers only the parts and the methods it names. Parts that were not opened or not reached were not examined, and faults that show only hot, under load or now and then may not have shown.',
  'It is not a warranty, not a roadworthiness certificate and not a statutory or licensed examination. Follow the maker’s manual and local law. Lifting gear, pressure equipment, protective structures, gas fuel and road use may need a licensed or competent person.',
  'A statement that something is within or beyond a limit is made only where a limit and its source are printed beside the reading. No other statement of conformity is made. This report is to be passed on whole.',
];

export const limitsOfInspection = {
  eye: 'What was examined by eye was examined as it stood, wiped where needed; crevices, painted and closed parts were not stripped. Hairline cracks can be missed this way.',
  notExamined: 'A part that was not examined is not a part without fault: nothing is known of it.',
} as const;

/** What a sheet measures, as the heading over its readings. */
const sheetNames: ReadonlyMap<string, string> = new Map([
  ['MS-01', 'Battery at rest'],
  ['MS-02', 'Battery under load'],
  ['MS-03', 'Cranking'],
  ['MS-04', 'Voltage drop of a cable'],
  ['MS-05', 'Charging'],
  ['MS-06', 'Pressure cap'],
  ['MS-07', 'Cooling system, pressure hold'],
  ['MS-08', 'Margin to boiling'],
  ['MS-09', 'Combustion gas in the coolant'],
  ['MS-10', 'Compression'],
  ['MS-11', 'Cylinder leakage'],
  ['MS-12', 'Bore'],
  ['MS-13', 'Flatness'],
  ['MS-14', 'Liner protrusion'],
  ['MS-15', 'Piston clearance and ring gap'],
  ['MS-16', 'Valves, seats and guides'],
  ['MS-17', 'Journals and bearings'],
  ['MS-18', 'Injectors'],
  ['MS-19', 'Leak rate'],
  ['MS-20', 'Hydraulic cylinder drift'],
  ['MS-21', 'Steering free play'],
  ['MS-22', 'Brakes'],
  ['MS-23', 'Hours'],
  ['MS-24', 'Crack growth'],
  ['MS-25', 'Hydraulic pressure and flow'],
  ['MS-26', 'Coolant'],
  ['MS-27', 'Oil pressure and level'],
  ['MS-28', 'Chain, fork, tyre and guard reach'],
]);

export function sheetName(sheet: string): string {
  return sheetNames.get(sheet) ?? 'Reading';
}
