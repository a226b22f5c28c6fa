import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { defectOf } from '../../../../shared-lib/defects/index.ts';
import { Finding, FindingLink, FindingProof } from '../../../../shared-lib/model/finding.ts';
import { Reading } from '../../../../shared-lib/model/reading.ts';
import { Shop } from '../../../../shared-lib/model/shop.ts';
import { ScopeItem, Visit } from '../../../../shared-lib/model/visit.ts';
import { Scenario } from '../../../../shared-lib/scenario/schema.ts';
import { toRecords } from '../../../../shared-lib/scenario/to-records.ts';

const folder = new URL('../../../reference/scenarios/', import.meta.url);
const read = (name: string): unknown => JSON.parse(readFileSync(new URL(name, folder), 'utf8'));
const files = readdirSync(folder).filter((name) => /^s\d.*\.json$/.test(name));
const s6 = () => Scenario.parse(read(files.find((name) => name.startsWith('s6')) ?? ''));

describe.each(files)('%s as records', (name) => {
  const records = toRecords(Scenario.parse(read(name)), (what) => what);

  it('passes the record’s own checks', () => {
    expect(() => Shop.parse(records.shop)).not.toThrow();
    for (const visit of records.visits) {
      expect(() => {
        Visit.parse(visit.visit);
        ScopeItem.array().parse(visit.scope);
        Finding.array().parse(visit.findings);
        FindingLink.array().parse(visit.links);
        FindingProof.array().parse(visit.proofs);
        Reading.array().parse(visit.readings);
      }).not.toThrow();
    }
  });

  it('makes every id once', () => {
    const ids = records.visits.flatMap(({ visit, scope, findings, links, proofs, readings, shots }) =>
      [visit, ...scope, ...findings, ...links, ...proofs, ...readings, ...shots].map(({ id }) => id),
    );
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('reads every quantity of a finding, or keeps it as typed', () => {
    for (const { findings } of records.visits) {
      for (const finding of findings) {
        if (finding.defect !== null) expect(defectOf(finding.defect)).not.toBeNull();
        for (const quantity of Object.values(finding.quantities)) expect(quantity.value).not.toBeNull();
        expect(new Set(findings.map(({ number }) => number)).size).toBe(findings.length);
      }
    }
  });
});

describe('what a file says', () => {
  it('keeps a tracked finding’s number and ties it to the earlier one', () => {
    const [first, second] = toRecords(s6(), (what) => what).visits;
    const now = second?.findings.find(({ defect }) => defect === 'crack');
    expect(now).toMatchObject({ number: 3, trackOf: first?.findingIdOf.get('F3') });
    expect(first?.findings.find(({ defect }) => defect === 'crack')).toMatchObject({ number: 3, trackOf: null });
  });

  it('asks for one plain picture for a finding shown by a photo, and for none where a named shot marks it', () => {
    const file = s6();
    const [visit] = file.visits;
    if (visit === undefined) throw new Error('no visit');
    expect(toRecords(file, (what) => what).visits[0]?.shots).toHaveLength(3);
    visit.shots = [
      {
        file: 'hose.jpg',
        marks: [
          {
            finding: 'F1',
            shape: 'line',
            points: [
              [1, 2],
              [3, 4],
            ],
          },
        ],
      },
      { file: 'walk-round.jpg' },
    ];
    const { shots = [], proofs = [] } = toRecords(file, (what) => what).visits[0] ?? {};
    expect(shots.map(({ shot }) => shot?.file ?? null)).toEqual(['hose.jpg', 'walk-round.jpg', null, null]);
    expect(proofs.filter(({ findingId }) => findingId === 'V1/F1').map(({ shotId }) => shotId)).toEqual([
      'V1/shot hose.jpg',
    ]);
  });

  it('takes ids from outside and nothing from the clock', () => {
    let count = 0;
    const make = () => {
      count += 1;
      return `id-${count}`;
    };
    const first = toRecords(s6(), make);
    count = 0;
    expect(toRecords(s6(), make)).toEqual(first);
  });

  it('reads meter and offset as hours', () => {
    const file = Scenario.parse(read(files.find((name) => name.startsWith('s3')) ?? ''));
    const records = toRecords(file, (what) => what);
    expect(records.meters[0]?.offsetHours).toBe(6100);
    expect(records.visits[0]?.visit.meter).toMatchObject({ reading: 3140, typed: '3140 h', meterId: 'meter M1' });
  });
});

describe('a file that is not right', () => {
  const broken = (change: (file: Scenario) => void): boolean => {
    const file = s6();
    change(file);
    return Scenario.safeParse(file).success;
  };
  const finding = (file: Scenario) => {
    const first = file.visits[0]?.findings[0];
    if (first === undefined) throw new Error('no finding');
    return first;
  };

  it('is refused', () => {
    expect(broken(() => undefined)).toBe(true);
    expect(broken((file) => delete finding(file).state)).toBe(false);
    expect(broken((file) => delete finding(file).safety)).toBe(false);
    expect(broken((file) => Object.assign(finding(file), { kind: 'observation' }))).toBe(false);
    expect(broken((file) => Object.assign(finding(file), { defect: 'rust-bucket' }))).toBe(false);
    expect(broken((file) => Object.assign(finding(file), { leadsTo: ['F9'] }))).toBe(false);
    expect(broken((file) => Object.assign(finding(file), { shownBy: ['R9'] }))).toBe(false);
    expect(broken((file) => Object.assign(finding(file), { colour: 'red' }))).toBe(false);
    expect(broken((file) => Object.assign(file, { format: 'scenario/2' }))).toBe(false);
    expect(broken((file) => Object.assign(file.visits[0] ?? {}, { by: 'P9' }))).toBe(false);
    expect(broken((file) => Object.assign(file.visits[1]?.findings[0] ?? {}, { track: 'V1/F9' }))).toBe(false);
  });
});
