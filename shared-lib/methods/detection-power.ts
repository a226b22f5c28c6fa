import type { MethodCode } from '../model/finding.ts';

/** What a negative is worth. */
export type Power = 'good' | 'partial' | 'cannot';
/** Reading sheets that look for a defect, beside the methods: gas test, compression, cylinder leakage. */
export type Detector = MethodCode | 'gas-test' | 'compression' | 'cylinder-leakage';

interface Cell {
  readonly power: Power;
  /** The condition under which that holds. */
  readonly note?: string;
}

export interface DetectionRow {
  readonly what: string;
  readonly defects: readonly string[];
  /** Codes of the parts it speaks of, where the same defect is another matter elsewhere. */
  readonly parts?: readonly string[];
  readonly cells: Readonly<Partial<Record<Detector, Cell>>>;
}

const good = (note?: string): Cell => ({ power: 'good', ...(note === undefined ? {} : { note }) });
const partial = (note?: string): Cell => ({ power: 'partial', ...(note === undefined ? {} : { note }) });
const cannot = (note?: string): Cell => ({ power: 'cannot', ...(note === undefined ? {} : { note }) });

/** Rows that name parts come before the general one. A detector that a row does not list cannot show it. Handbook 4.1a; common practice, no source. */
export const detectionTable: readonly DetectionRow[] = [
  {
    what: 'weld crack under paint',
    defects: ['crack'],
    parts: ['FRM', 'PROT'],
    cells: { PT: cannot('the paint has to come off first'), MT: partial() },
  },
  {
    what: 'tight crack open to the surface',
    defects: ['crack', 'heatcheck'],
    cells: {
      MG: partial(),
      PT: good(),
      MT: good('iron and steel'),
      PR: partial('if it reaches the jacket'),
      'gas-test': partial(),
      'cylinder-leakage': partial(),
    },
  },
  {
    what: 'fire-ring or gasket leak',
    defects: ['combgas', 'burnt'],
    parts: ['HG', 'COOL', 'COOLANT'],
    cells: {
      V: partial('after stripping'),
      MG: partial(),
      PR: partial(),
      'gas-test': partial(),
      compression: partial(),
      'cylinder-leakage': good(),
      M: partial('flatness'),
      LAB: partial(),
    },
  },
  {
    what: 'cavitation depth and wall left',
    defects: ['caverode'],
    cells: {
      V: partial(),
      MG: partial(),
      PR: good('a hole right through, cold and warm'),
      M: partial('pin gauge'),
      UT: good(),
      'cylinder-leakage': cannot('the piston stands low'),
    },
  },
  {
    what: 'scuffing or scoring',
    defects: ['scuff', 'score'],
    cells: {
      V: good('stripped; through a borescope only in part'),
      MG: good(),
      compression: partial(),
      'cylinder-leakage': partial(),
      M: partial(),
      LAB: partial('metal in it'),
    },
  },
  {
    what: 'bearing wear',
    defects: ['wear'],
    parts: ['MBRG', 'RBRG', 'THRW', 'BRGH', 'HUB'],
    cells: { V: partial(), MG: partial(), M: good(), LAB: partial() },
  },
  {
    what: 'bore wear and taper',
    defects: ['wear', 'wearstep'],
    parts: ['LNR', 'BORE'],
    cells: { compression: partial(), 'cylinder-leakage': partial(), M: good(), LAB: partial() },
  },
  {
    what: 'valve or seat leak',
    defects: ['burnt'],
    parts: ['IV', 'IVS', 'EV', 'EVS'],
    cells: { V: partial(), MG: partial(), compression: partial(), 'cylinder-leakage': good(), M: partial() },
  },
  {
    what: 'scale in passages',
    defects: ['scale'],
    cells: { V: partial('where it can be seen'), MG: partial(), UT: partial(), LAB: partial() },
  },
  {
    what: 'damage inside a hose or crimp',
    defects: ['hosecover', 'crimp', 'agehard'],
    parts: ['HOSE'],
    cells: { PR: partial('proof test by a hose shop') },
  },
];
