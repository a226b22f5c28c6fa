import { useAnswer } from '../api/queries.ts';
import { machineName } from '../machines/floor-words.ts';
import { Breadcrumb, Header, HeaderEnd, HeaderMiddle, Pages } from '../ui/Header.tsx';
import { dateWords } from '../ui/words.ts';
import { useCommand } from './command-keys.ts';
import { go, type Place, turnTo, type VisitPage } from './place.ts';
import { UndoLink } from './UndoLink.tsx';
import { WhoChip } from './WhoChip.tsx';

type VisitPlaceState = Extract<Place, { name: 'visit' }>;

const pages = [
  { page: 'page', words: 'Page' },
  { page: 'photos', words: 'Photos' },
  { page: 'sheets', words: 'Sheets' },
  { page: 'causes', words: 'Causes' },
  { page: 'choices', words: 'Choices' },
  { page: 'work', words: 'Work' },
  { page: 'report', words: 'Report' },
] as const satisfies readonly { page: VisitPage; words: string }[];

/** Trail, undo and pages over every page of a visit. */
export function VisitHeader({ place }: { readonly place: VisitPlaceState }) {
  const { visitId, page } = place;
  const record = useAnswer('visit.get', { id: visitId }).data;
  useCommand('visit.page', () => turnTo(visitId, 'page'));
  useCommand('visit.photos', () => turnTo(visitId, 'photos'));
  useCommand('visit.sheets', () => turnTo(visitId, 'sheets'));
  useCommand('visit.causes', () => turnTo(visitId, 'causes'));
  useCommand('visit.choices', () => turnTo(visitId, 'choices'));
  useCommand('visit.work', () => turnTo(visitId, 'work'));
  useCommand('report.open', () => turnTo(visitId, 'report'));

  const trail = [{ words: 'Floor', onGo: () => go({ name: 'floor' }) }];
  if (record !== undefined) {
    const { machine } = record;
    trail.push({
      words: machineName(machine),
      onGo: () => go({ name: 'machine', machineId: machine.id }),
    });
  }
  return (
    <Header>
      <Breadcrumb trail={trail} here={record === undefined ? 'Visit' : dateWords(record.visit.date)} />
      <HeaderMiddle>
        <UndoLink visitId={visitId} />
      </HeaderMiddle>
      <HeaderEnd>
        <Pages pages={pages} current={page} onGo={(to) => turnTo(visitId, to)} />
        <WhoChip />
      </HeaderEnd>
    </Header>
  );
}
