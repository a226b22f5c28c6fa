import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { diagramsFor } from '../../shared-lib/diagrams/diagram-for.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import { isBelow } from '../../shared-lib/parts/is-below.ts';
import { parseLocation } from '../../shared-lib/parts/parse-location.ts';
import { LocationDiagram } from './LocationDiagram.tsx';

interface FindingDiagramsProps {
  readonly record: VisitRecord;
  readonly finding: Finding;
  readonly onPick: (path: string) => void;
}

/** The drawings of one finding's places; mostly one. The first is also a way to say where. */
export function FindingDiagrams({ record, finding, onPick }: FindingDiagramsProps) {
  const { id, number, state, locations } = finding;
  const tier = record.standing.lines.find(({ findingId }) => findingId === id)?.tier ?? null;
  const diagrams = diagramsFor([{ findingId: id, tag: { number, tier, state }, locations }], record.layout.layout);
  const [first] = locations;
  /** Pointing at where it is already keeps what was said of depth and clock. */
  const pick = (path: string) => {
    const isThere =
      first !== undefined &&
      isBelow(first, path) &&
      parseLocation(first).path.length === parseLocation(path).path.length;
    if (!isThere) onPick(path);
  };
  return diagrams.map((diagram, index) => (
    <LocationDiagram
      key={`${diagram.kind} ${diagram.subject}`}
      diagram={diagram}
      onPick={index === 0 ? pick : undefined}
    />
  ));
}
