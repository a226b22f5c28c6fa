import { defectOf } from '../defects/index.ts';
import type { ScenarioShape, ScenarioVisit } from './shape.ts';

export interface ReferenceIssue {
  readonly path: (string | number)[];
  readonly message: string;
}

/** What the shape of a file cannot say: every name it uses must be one it has given. */
export function checkReferences(scenario: ScenarioShape): ReferenceIssue[] {
  const issues: ReferenceIssue[] = [];
  const tell = (path: (string | number)[], message: string) => issues.push({ path, message });
  const people = new Set(scenario.people.map(({ id }) => id));
  const meters = new Set(scenario.machine.meters.map(({ id }) => id));
  const earlier = new Set<string>();
  for (const [at, visit] of scenario.visits.entries()) {
    if (!people.has(visit.by)) tell(['visits', at, 'by'], `nobody is called ${visit.by}`);
    if (!meters.has(visit.meter.id)) tell(['visits', at, 'meter', 'id'], `there is no meter ${visit.meter.id}`);
    for (const { path, message } of findingReferences(visit, earlier))
      tell(['visits', at, 'findings', ...path], message);
    for (const { path, message } of workReferences(visit)) tell(['visits', at, 'work', ...path], message);
    for (const { id } of visit.findings) earlier.add(`${visit.id}/${id}`);
  }
  return issues;
}

function workReferences({ findings, readings = [], work = [] }: ScenarioVisit): ReferenceIssue[] {
  const known = new Set([...findings, ...readings].map(({ id }) => id));
  return work.flatMap(({ finding = [], shownBy = [] }, index) =>
    [finding, shownBy]
      .flat()
      .filter((id) => !known.has(id))
      .map((id) => ({ path: [index], message: `this visit has no ${id}` })),
  );
}

function findingReferences(visit: ScenarioVisit, earlier: ReadonlySet<string>): ReferenceIssue[] {
  const findings = new Set(visit.findings.map(({ id }) => id));
  const readings = new Set((visit.readings ?? []).map(({ id }) => id));
  return visit.findings.flatMap((finding, index) => {
    const issues: ReferenceIssue[] = [];
    const tell = (key: string, message: string) => issues.push({ path: [index, key], message });
    if (finding.defect !== undefined && defectOf(finding.defect) === null) {
      tell('defect', `there is no defect ${finding.defect}`);
    }
    if (finding.track !== undefined && !earlier.has(finding.track)) {
      tell('track', `no earlier visit has ${finding.track}`);
    }
    for (const target of finding.leadsTo ?? []) {
      const id = typeof target === 'string' ? target : target.id;
      if (!findings.has(id)) tell('leadsTo', `this visit has no finding ${id}`);
    }
    for (const shownBy of finding.shownBy ?? []) {
      if (shownBy !== 'photo' && !readings.has(shownBy)) tell('shownBy', `this visit has no reading ${shownBy}`);
    }
    return issues;
  });
}
