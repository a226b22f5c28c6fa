import { wordsOf } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import type { VisitPage } from '../app/place.ts';
import { CausesPage } from '../causes/CausesPage.tsx';
import { ChoicesPage } from '../choices/ChoicesPage.tsx';
import { PhotosPage } from '../photos/PhotosPage.tsx';
import { ReportPage } from '../report/ReportPage.tsx';
import { type OpenSheet, SheetsPage } from '../sheets/SheetsPage.tsx';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Waiting } from '../ui/Waiting.tsx';
import { WorkPage } from '../work/WorkPage.tsx';
import { NotebookPage } from './NotebookPage.tsx';
import styles from './VisitPlace.module.css';

export interface VisitPlaceProps {
  readonly visitId: string;
  readonly page: VisitPage;
  readonly shotId: string | undefined;
  readonly thenShotId: string | undefined;
  readonly findingId: string | undefined;
  readonly sheet: OpenSheet;
  readonly choiceId: string | undefined;
}

/** What stands under the visit's header. */
export function VisitPlace({ visitId, page, shotId, thenShotId, findingId, sheet, choiceId }: VisitPlaceProps) {
  const visit = useAnswer('visit.get', { id: visitId });
  if (visit.data === undefined) {
    if (!visit.isError) return <Waiting words="Opening the visit ..." />;
    return (
      <div className={styles.failed}>
        <ErrorNote {...wordsOf(visit.error)}>
          <Button onPress={() => void visit.refetch()}>Ask again</Button>
        </ErrorNote>
      </div>
    );
  }
  switch (page) {
    case 'page':
      return <NotebookPage record={visit.data} findingId={findingId} />;
    case 'photos':
      return <PhotosPage record={visit.data} shotId={shotId} thenShotId={thenShotId} findingId={findingId} />;
    case 'sheets':
      return <SheetsPage record={visit.data} open={sheet} />;
    case 'causes':
      return <CausesPage record={visit.data} />;
    case 'choices':
      return <ChoicesPage record={visit.data} findingId={findingId} choiceId={choiceId} />;
    case 'work':
      return <WorkPage record={visit.data} />;
    case 'report':
      return <ReportPage record={visit.data} />;
  }
}
