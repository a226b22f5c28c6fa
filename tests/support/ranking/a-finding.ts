import type { Finding, FindingProof } from '../../../shared-lib/model/finding.ts';
import type { Layout } from '../../../shared-lib/model/layout.ts';
import type { Rankable } from '../../../shared-lib/ranking/rankable.ts';
import { loaderLayout } from '../loader-layout.ts';

export const noUse = { road: false, slope: false, peopleNear: false, exposureHours: 250 };

export const plainLayout: Layout = { ...loaderLayout, engine: { ...loaderLayout.engine, liner: 'unknown' } };

/** A condition with all judgements given: no safety side, no hurry, small damage. Say what differs. */
export function aFinding(number: number, differs: Partial<Finding> = {}): Finding {
  return {
    id: `f${number}`,
    visitId: 'v1',
    number,
    trackOf: null,
    supersedes: null,
    supersededBecause: null,
    moved: null,
    createdAtMs: 0,
    binned: false,
    kind: 'condition',
    defect: 'wear',
    words: '',
    state: 'confirmed',
    methods: ['M'],
    quantities: {},
    safety: 'none',
    urgency: 5,
    runWorse: false,
    damageClass: 4,
    facts: [],
    locations: ['ENG'],
    notExaminedBecause: null,
    namedConditionDeclinedBecause: null,
    ifLeft: '',
    watchFor: '',
    action: null,
    actionWords: '',
    doNotOperate: false,
    doNotRun: false,
    loopStart: false,
    foundOn: '2026-03-01',
    ...differs,
  };
}

/** A photo that shows it. */
export function shownBy(finding: Finding): FindingProof {
  return { id: `proof-${finding.id}`, findingId: finding.id, shotId: 'shot-1', readingId: null };
}

export function aRankable(number: number, differs: Partial<Rankable> = {}): Rankable {
  return {
    id: `f${number}`,
    number,
    state: 'confirmed',
    safety: 'none',
    urgency: 5,
    runWorse: false,
    damageClass: 4,
    place: 'ENG',
    criticalSystem: false,
    named: null,
    namedDeclinedBecause: null,
    foundOn: null,
    loopStart: false,
    ...differs,
  };
}
