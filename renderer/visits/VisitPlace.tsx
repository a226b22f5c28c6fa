import { wordsOf } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import type { VisitPage } from '../app/place.ts';
import { EmptyPlace } from '../ui/EmptyPlace.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Waiting } from '../ui/Waiting.tsx';

export interface VisitPlaceProps {
  readonly visitId: string;
  readonly page: VisitPage;
  readonly shotId: string | undefined;
  readonly findingId: string | undefined;
}

/** What stands under the visit's header. */
export function VisitPlace({ visitId }: VisitPlaceProps) {
  const visit = useAnswer('visit.get', { id: visitId });
  if (visit.isError) return <ErrorNote {...wordsOf(visit.error)} />;
  if (visit.data === undefined) return <Waiting words="Opening the visit ..." />;
  return (
    <EmptyPlace compact title={visit.data.machine.kind}>
      <p>{visit.data.visit.complaint}</p>
    </EmptyPlace>
  );
}
