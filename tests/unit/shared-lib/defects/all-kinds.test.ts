import { describe, expect, it } from 'vitest';
import { defectOf, defects } from '../../../../shared-lib/defects/index.ts';
import { methodCodes } from '../../../../shared-lib/model/finding.ts';
import { shapeNames } from '../../../../shared-lib/model/mark.ts';
import type { Component } from '../../../../shared-lib/parts/component.ts';
import { componentTemplate } from '../../../../shared-lib/parts/component-template.ts';
import { quantityKind } from '../../../../shared-lib/quantities/dictionary.ts';
import { readQuantity } from '../../../../shared-lib/quantities/read-quantity.ts';
import { unitNamed } from '../../../../shared-lib/quantities/units.ts';

/** The kinds of the handbook's chapter 3, in its order. */
const chapter3 =
  'crack heatcheck overheatmark scuff score seizure burnt missing broken pit caverode corr galv scale sludge deposit warp sunk fret brinell spall wearstep wear polish thread deform chafe hosecover crimp sealleak spray mixing combgas restrict contam wrongfluid play loose wrongfast badrepair inop bypass noguard drift lowout noise misfit agehard'.split(
    ' ',
  );

/** The confirm column of chapter 3, spelled in method codes: sheets are measured or functional, a nail test is by eye. */
const confirmColumn: Readonly<Record<string, string>> = {
  crack: 'PT MT PR',
  heatcheck: 'MG PT',
  overheatmark: 'V',
  scuff: 'V',
  score: 'V M',
  seizure: 'F',
  burnt: 'V',
  missing: 'V',
  broken: 'V',
  pit: 'V MG M',
  caverode: 'V M UT PR',
  corr: 'M UT',
  galv: 'E',
  scale: 'V',
  sludge: 'V LAB',
  deposit: 'V',
  warp: 'M',
  sunk: 'M',
  fret: 'V MG',
  brinell: 'V MG',
  spall: 'V',
  wearstep: 'M',
  wear: 'M',
  polish: 'V',
  thread: 'M F',
  deform: 'M',
  chafe: 'V',
  hosecover: 'V',
  crimp: 'V',
  sealleak: 'F',
  spray: 'V',
  mixing: 'LAB V',
  combgas: 'F LAB',
  restrict: 'M F',
  contam: 'LAB V',
  wrongfluid: 'M LAB',
  play: 'M',
  loose: 'M F',
  wrongfast: 'V M',
  badrepair: 'V',
  inop: 'F',
  bypass: 'F V',
  noguard: 'V',
  drift: 'M F',
  lowout: 'M F E',
  noise: 'F',
  misfit: 'M',
  agehard: 'V',
};

const allCodes = new Set<string>();
const collect = (components: readonly Component[]) => {
  for (const component of components) {
    allCodes.add(component.code);
    collect(component.parts ?? []);
  }
};
collect(componentTemplate);

it('lists every kind of the handbook once, in its order', () => {
  expect(defects.map(({ id }) => id)).toEqual(chapter3);
});

it('has no two kinds of one name', () => {
  expect(new Set(defects.map(({ name }) => name)).size).toBe(defects.length);
});

it('does not know a kind it was never told of', () => {
  expect(defectOf('rust-bucket')).toBeNull();
  expect(defectOf(null)).toBeNull();
});

describe.each(defects.map((defect) => [defect.id, defect] as const))('%s', (id, defect) => {
  it('is named and explained in words', () => {
    expect(defect.name).toMatch(/^[A-Z][a-z -]{3,}$/);
    expect(defect.meaning.length).toBeGreaterThan(12);
    expect(defect.sought).toMatch(/^[a-z][a-z -]{3,}$/);
    expect(defect.misses).toMatch(/^[A-Z].{15,}\.$/s);
    for (const text of [...defect.lookFor, ...defect.ifLeft]) expect(text.trim().length).toBeGreaterThan(2);
    expect(defect.ifLeft.length).toBeGreaterThan(0);
    expect(defect.lookFor.length).toBeGreaterThan(0);
  });

  it('shows no code of the handbook to people', () => {
    const words = [defect.name, defect.meaning, defect.misses, ...defect.lookFor, ...defect.ifLeft].join(' ');
    expect(words).not.toMatch(/\b(MS-\d|CAU-|[TUD]\d\b|PT|MT|UT|VAC|LAB)\b/);
  });

  it('begins with a shape the stage can draw', () => {
    expect(shapeNames).toContain(defect.mark);
  });

  it('is confirmed by the methods of the confirm column', () => {
    expect([...defect.confirmedBy].sort()).toEqual((confirmColumn[id] ?? '').split(' ').sort());
    for (const code of defect.confirmedBy) expect(methodCodes).toContain(code);
  });

  const { where } = defect;
  if (where !== 'anywhere')
    it('belongs to parts that the component tree has', () => {
      expect(where.length).toBeGreaterThan(0);
      expect(where.filter((code) => !allCodes.has(code))).toEqual([]);
    });

  it('asks for quantities with a sane range and a unit we know', () => {
    expect(defect.quantities.length).toBeGreaterThan(0);
    expect(new Set(defect.quantities).size).toBe(defect.quantities.length);
    for (const quantityId of defect.quantities) {
      const kind = quantityKind(quantityId);
      if (kind === null) throw new Error(`no quantity ${quantityId}`);
      expect(kind.label.length).toBeGreaterThan(1);
      if (kind.unit !== '') expect(unitNamed(kind.unit)?.symbol).toBe(kind.unit);
      if (kind.range !== null) expect(kind.range.least).toBeLessThan(kind.range.most);
      if (kind.fallback !== null) {
        const figure = 'share' in kind.fallback ? kind.fallback.share : kind.fallback.absolute;
        expect(figure).toBeGreaterThanOrEqual(0);
        expect(figure).toBeLessThan(kind.range?.most ?? 0);
      }
    }
  });

  it('is said in lower case, also with nothing measured yet', () => {
    expect(defect.speak({ quantities: {} })).toMatch(/^[a-z][a-z -]+$/);
  });

  it('says at least one of its quantities once they are given', () => {
    const quantities = Object.fromEntries(
      defect.quantities.map((quantityId) => {
        const kind = quantityKind(quantityId);
        const typed = kind?.answers?.[0] ?? '3';
        return [quantityId, readQuantity(typed, kind?.unit ?? '', 'measured', kind)];
      }),
    );
    if (['missing', 'deform'].includes(id)) expect(defect.speak({ quantities })).toMatch(/3/);
    const said = defect.speak({ quantities });
    expect(said).not.toMatch(/undefined|null|NaN|\s{2}|\s$|^\s/);
    expect(said).not.toBe(defect.speak({ quantities: {} }));
  });
});

describe('the fragment a report says it with', () => {
  const thin = (text: string) => text.replaceAll('_', '\u202f');
  const said = (id: string, typed: Record<string, string>, system: 'metric' | 'us' = 'metric') => {
    const quantities = Object.fromEntries(
      Object.entries(typed).map(([key, text]) => {
        const kind = quantityKind(key);
        return [key, readQuantity(text, kind?.unit ?? '', 'measured', kind)];
      }),
    );
    return defectOf(id)?.speak({ quantities }, system);
  };
  it.each([
    ['crack', { length: '14 mm' }, 'crack 14_mm'],
    ['heatcheck', { length: '9 mm', width: '6 mm' }, 'heat checking 9_×_6_mm'],
    ['scuff', { width: '60 mm', length: '110 mm', coverage: '16.7 %' }, 'scuffed 60_×_110_mm, 16.7_%'],
    ['score', { depth: '0.3 mm', length: '180 mm' }, 'scored 0.3_mm deep, 180_mm'],
    ['hosecover', { length: '25 mm', layer: 'reinforcement' }, 'cover worn 25_mm, down to the reinforcement'],
    ['drift', { drift: '18 mm per 30 min' }, 'drifts 18_mm per 30 min'],
    ['galv', { drop: '0.38 V', resistance: '0.79 mΩ' }, 'corroded contact, drops 0.38_V'],
    ['play', { play: '18.3 °' }, 'play 18.3°'],
    ['play', { play: '0.8 mm' }, 'play 0.8_mm'],
    ['sealleak', { class: 'II' }, 'leak, class II'],
    ['sealleak', { drops: '42', leak: '1.47 mL/min' }, 'leaks 1.47_mL/min'],
    ['caverode', { depth: '4.2 mm', hole: '0.4 mm' }, 'eaten through 0.4_mm'],
    ['inop', { shown: '0 kPa', true: '310 kPa' }, 'shows 0_kPa, true 310_kPa'],
    ['lowout', { creep: '400 mm', time: '5 min' }, 'creeps 400_mm in 5_min'],
    ['lowout', { deceleration: '1.23 m/s²' }, 'slows at only 1.23_m/s²'],
    ['broken', { pieces: '3' }, 'broken in 3 pieces'],
    ['crack', { length: 'about a thumb' }, 'crack about a thumb'],
  ])('%s %o', (id, typed, expected) => {
    expect(said(id, typed)).toBe(thin(expected));
  });

  it('follows the shop’s units', () => {
    expect(said('crack', { length: '14 mm' }, 'us')).toBe(thin('crack 0.55_in'));
  });
});
