import { describe, expect, it } from 'vitest';
import { defectsForComponent } from '../../../../shared-lib/defects/defects-for-component.ts';
import { defects } from '../../../../shared-lib/defects/index.ts';
import { lastUsedFirst } from '../../../../shared-lib/defects/last-used-first.ts';

const ids = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id);

describe('the kinds offered for a part', () => {
  it('begin with those that belong to it', () => {
    const hose = ids(defectsForComponent('HYD/HOSE.boom.L@end=A;z=340').fitting);
    expect(hose.slice(0, 12)).toEqual(expect.arrayContaining(['chafe', 'hosecover', 'crimp', 'sealleak', 'spray']));
    expect(hose).not.toContain('scuff');
  });

  it('belong to a part when they belong to what it is part of', () => {
    expect(ids(defectsForComponent('ENG/HD.1/BRIDGE.2').fitting)).toEqual(
      expect.arrayContaining(['crack', 'heatcheck']),
    );
  });

  it.each([null, 'ENG', 'HYD/HOSE', 'PROT/ROPS', 'COOL/COOLANT'])('leave none of them out at %s', (place) => {
    const { fitting, others } = defectsForComponent(place);
    expect([...ids(fitting), ...ids(others)].sort()).toEqual(ids(defects).sort());
  });
});

describe('last used first', () => {
  it('puts the newest first and keeps the order of the rest', () => {
    const list = defects.slice(0, 4);
    expect(ids(lastUsedFirst(list, ['scuff', 'crack']))).toEqual(['scuff', 'crack', 'heatcheck', 'overheatmark']);
  });

  it('passes over what is not offered, and names nothing twice', () => {
    const list = defects.slice(0, 3);
    expect(ids(lastUsedFirst(list, ['wear', 'crack', 'crack', 'never']))).toEqual(ids(list));
  });
});
