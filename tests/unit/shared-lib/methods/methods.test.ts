import { describe, expect, it } from 'vitest';
import { defectOf } from '../../../../shared-lib/defects/index.ts';
import { type Detector, detectionTable, type Power } from '../../../../shared-lib/methods/detection-power.ts';
import { methodOf, methods } from '../../../../shared-lib/methods/index.ts';
import { detectionPower, notFoundSentence } from '../../../../shared-lib/methods/not-found.ts';
import { methodCodes } from '../../../../shared-lib/model/finding.ts';

describe('methods', () => {
  it('has each method once, in the order of the record', () => {
    expect(methods.map(({ code }) => code)).toEqual(methodCodes);
  });

  it.each(methods.map((method) => [method.name, method] as const))(
    '%s says what it sees and what it cannot',
    (_, method) => {
      expect(method.name).toMatch(/^[A-Z][a-z ,]+$/);
      expect(method.by).toMatch(/^by [a-z ]+$/);
      for (const text of [method.sees, method.cannotSee, method.record]) expect(text.length).toBeGreaterThan(10);
      expect(methodOf(method.code)).toBe(method);
    },
  );
});

describe('what a negative is worth', () => {
  /** Handbook 4.1a, cell by cell where it names a method or one of three sheets; common practice, no source. */
  const table: readonly [string, string | null, Detector, Power][] = [
    ['crack', 'ENG/HD.1', 'V', 'cannot'],
    ['crack', 'ENG/HD.1', 'MG', 'partial'],
    ['crack', 'ENG/HD.1', 'PT', 'good'],
    ['crack', 'ENG/HD.1', 'MT', 'good'],
    ['crack', 'ENG/HD.1', 'PR', 'partial'],
    ['crack', 'ENG/HD.1', 'gas-test', 'partial'],
    ['crack', 'ENG/HD.1', 'compression', 'cannot'],
    ['crack', 'ENG/HD.1', 'cylinder-leakage', 'partial'],
    ['crack', 'ENG/HD.1', 'M', 'cannot'],
    ['crack', 'ENG/HD.1', 'UT', 'cannot'],
    ['crack', 'ENG/HD.1', 'LAB', 'cannot'],
    ['crack', 'FRM/BOOM', 'PT', 'cannot'],
    ['crack', 'FRM/BOOM', 'MT', 'partial'],
    ['crack', 'FRM/BOOM', 'V', 'cannot'],
    ['caverode', 'ENG/LNR.4', 'UT', 'good'],
    ['caverode', 'ENG/LNR.4', 'V', 'partial'],
    ['caverode', 'ENG/LNR.4', 'PR', 'good'],
    ['scuff', 'ENG/PST.3/SKT', 'MG', 'good'],
    ['scuff', 'ENG/PST.3/SKT', 'compression', 'partial'],
    ['wear', 'ENG/LNR.4', 'M', 'good'],
    ['wear', 'ENG/LNR.4', 'V', 'cannot'],
    ['wear', 'ENG/CRK/MBRG.4', 'V', 'partial'],
    ['wear', 'ENG/CRK/MBRG.4', 'M', 'good'],
    ['burnt', 'ENG/HD.1/EV.3.1', 'cylinder-leakage', 'good'],
    ['burnt', 'ENG/HG.1', 'V', 'partial'],
    ['combgas', 'COOL/COOLANT', 'gas-test', 'partial'],
    ['scale', 'COOL/RAD', 'V', 'partial'],
    ['hosecover', 'HYD/HOSE.boom.L', 'V', 'cannot'],
    ['hosecover', 'HYD/HOSE.boom.L', 'PR', 'partial'],
  ];
  it.each(table)('%s at %s by %s: %s', (defect, place, detector, power) => {
    expect(detectionPower(defect, detector, place)).toBe(power);
  });

  it('claims no more than partial where no row speaks of the defect', () => {
    expect(detectionPower('inop', 'F', 'INST/OILP')).toBe('partial');
    expect(detectionPower('inop', 'PT', 'INST/OILP')).toBe('cannot');
    expect(detectionPower('never heard of', 'V', null)).toBe('cannot');
  });

  it('speaks only of defects that exist', () => {
    for (const { defects } of detectionTable) for (const id of defects) expect(defectOf(id)).not.toBeNull();
  });

  it.each([
    [
      'crack',
      ['V', 'MG'],
      'ENG/BLK/DECK.1',
      'Not found by eye, which can miss it; nor by magnifier, which can miss it',
    ],
    ['crack', ['PT'], 'ENG/BLK/DECK.1', 'Not found by penetrant'],
    ['crack', ['PT'], 'FRM/BOOM', 'Not found by penetrant, which can miss it'],
    ['crack', [], 'FRM/BOOM', 'Not found; no method is named'],
  ] as const)('%s by %o at %s', (defect, codes, place, sentence) => {
    expect(notFoundSentence(defect, codes, place)).toBe(sentence);
  });

  it('never says good, safe or no problem', () => {
    for (const { code } of methods) {
      expect(notFoundSentence('crack', [code], 'ENG/HD.1')).not.toMatch(/good|safe|fine|OK|problem/i);
    }
  });
});
