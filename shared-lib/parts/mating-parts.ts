import type { Layout } from '../model/layout.ts';

/** Which of a finding's coordinates mean the same spot on the mate. */
export type SharedCoordinates = 'clock' | 'side, clock and depth' | 'side' | 'none';

export interface MatingRule {
  /** The code of the part; `LNR>OUT` is the outside of a liner, as a part of its own or as a face. */
  readonly part: string;
  /**
   * Places to look at: `.#` stands for the part's own first index, `.#.#` for both, `.^` for those of the part above it,
   * `./` for the part above itself.
   */
  readonly mates: readonly string[];
  readonly shared: SharedCoordinates;
  /** Said after the mate's name. */
  readonly why: string;
  readonly when?: (layout: Layout) => boolean;
}

const hasLiners = ({ engine }: Layout): boolean => engine.liner === 'dry' || engine.liner === 'wet';
/** A bore of unknown make is called a bore, not a liner. */
const hasBareBores = (layout: Layout): boolean => !hasLiners(layout);
const coolantBehindLiner = ({ engine }: Layout): boolean => engine.liner === 'wet' || engine.liner === 'unknown';
const dryLiners = ({ engine }: Layout): boolean => engine.liner === 'dry';
/** On a V two rods share a crankpin, so that its number names no one cylinder. */
const pinToEachRod = ({ engine }: Layout): boolean => engine.arrangement !== 'V';

const clamped = 'it is clamped against this spot';
const coolantBetween = 'the coolant stands between them';
const skirtRuns = 'the skirt runs against it';
const ringRuns = 'the ring runs against it';
const shellsBetween = 'the shells lie between them';

/**
 * Parts that leave their traces on each other.
 *
 * Source: the handbook's 2.3 c for deck, gasket and fire face, liner and jacket, skirt and bore, journal and shell; the
 * other pairs are common practice, no source.
 */
export const matingRules: readonly MatingRule[] = [
  { part: 'DECK', mates: ['ENG/HG.#', 'ENG/HD.#/FIRE'], shared: 'clock', why: clamped },
  { part: 'HG', mates: ['ENG/BLK/DECK.#', 'ENG/HD.#/FIRE'], shared: 'clock', why: clamped },
  { part: 'FIRE', mates: ['ENG/HG.^', 'ENG/BLK/DECK.^'], shared: 'clock', why: clamped },
  {
    part: 'LNR>OUT',
    mates: ['ENG/BLK/WJ.#'],
    shared: 'side, clock and depth',
    why: coolantBetween,
    when: coolantBehindLiner,
  },
  {
    part: 'LNR>OUT',
    mates: ['ENG/BLK/BORE.#'],
    shared: 'side, clock and depth',
    why: 'the liner sits in it',
    when: dryLiners,
  },
  {
    part: 'BORE',
    mates: ['ENG/LNR.#@face=OUT'],
    shared: 'side, clock and depth',
    why: 'it sits in this bore',
    when: dryLiners,
  },
  {
    part: 'WJ',
    mates: ['ENG/LNR.#@face=OUT'],
    shared: 'side, clock and depth',
    why: coolantBetween,
    when: coolantBehindLiner,
  },
  { part: 'LNR>IN', mates: ['ENG/PST.#/SKT'], shared: 'side', why: 'it runs against this surface' },
  { part: 'BORE', mates: ['ENG/PST.#/SKT'], shared: 'side', why: 'it runs against this surface', when: hasBareBores },
  { part: 'SKT', mates: ['ENG/LNR.^@face=IN'], shared: 'side', why: skirtRuns, when: hasLiners },
  { part: 'SKT', mates: ['ENG/BLK/BORE.^'], shared: 'side', why: skirtRuns, when: hasBareBores },
  { part: 'RING', mates: ['ENG/LNR.#@face=IN'], shared: 'none', why: ringRuns, when: hasLiners },
  { part: 'RING', mates: ['ENG/BLK/BORE.#'], shared: 'none', why: ringRuns, when: hasBareBores },
  { part: 'FLG', mates: ['ENG/BLK/CBORE.^'], shared: 'clock', why: 'the flange sits in it' },
  { part: 'CBORE', mates: ['ENG/LNR.#/FLG'], shared: 'clock', why: 'it sits in this counterbore' },
  { part: 'SEAL', mates: ['ENG/BLK/LWR.^'], shared: 'clock', why: 'the seal ring sits in it' },
  { part: 'LWR', mates: ['ENG/LNR.#/SEAL'], shared: 'clock', why: 'they sit in this bore' },
  { part: 'MJ', mates: ['ENG/CRK/MBRG.#'], shared: 'none', why: 'the journal runs in it' },
  { part: 'MBRG', mates: ['ENG/CRK/MJ.#', 'ENG/BLK/MAIN.#'], shared: 'none', why: shellsBetween },
  { part: 'MAIN', mates: ['ENG/CRK/MBRG.#'], shared: 'none', why: 'it is clamped in this saddle' },
  { part: 'CP', mates: ['ENG/ROD.#/RBRG'], shared: 'none', why: 'the crankpin runs in them', when: pinToEachRod },
  { part: 'RBRG', mates: ['ENG/CRK/CP.^'], shared: 'none', why: 'it runs in these shells', when: pinToEachRod },
  { part: 'RBRG', mates: ['ENG/ROD.^/BIG'], shared: 'none', why: 'the shells sit in it' },
  { part: 'IV', mates: ['ENG/HD.^/IVS.#.#', 'ENG/HD.^/IVG.#.#'], shared: 'none', why: 'the valve works in it' },
  { part: 'IVS', mates: ['ENG/HD.^/IV.#.#'], shared: 'clock', why: 'it closes on this seat' },
  { part: 'EV', mates: ['ENG/HD.^/EVS.#.#', 'ENG/HD.^/EVG.#.#'], shared: 'none', why: 'the valve works in it' },
  { part: 'EVS', mates: ['ENG/HD.^/EV.#.#'], shared: 'clock', why: 'it closes on this seat' },
  { part: 'SMALL', mates: ['ENG/PIN.^'], shared: 'none', why: 'it runs in this bush' },
  { part: 'PIN', mates: ['ENG/ROD.#/SMALL', 'ENG/PST.#/PINB'], shared: 'none', why: 'the pin runs in it' },
  { part: 'JET', mates: ['ENG/PST.#/CRN', 'ENG/PST.#/SKT'], shared: 'none', why: 'the jet cools it' },
  { part: 'BAR', mates: ['./PIS'], shared: 'none', why: 'it runs in this barrel' },
  { part: 'PIS', mates: ['./BAR'], shared: 'none', why: 'the piston runs in it' },
  { part: 'RODH', mates: ['./GL', './RSEAL'], shared: 'none', why: 'the rod slides through it' },
  { part: 'DISC', mates: ['BRK/LINING.#'], shared: 'none', why: 'it rubs on this disc' },
  { part: 'DRUM', mates: ['BRK/LINING.#'], shared: 'none', why: 'it rubs in this drum' },
  { part: 'LINING', mates: ['BRK/DISC.#', 'BRK/DRUM.#'], shared: 'none', why: 'the lining rubs on it' },
];
