import { type ReactNode, useState } from 'react';
import type { MachinePage, MachineVisit } from '../../shared-lib/contract/machines.ts';
import { wordsOf } from '../api/client.ts';
import { useChange, useKeepAnswer } from '../api/queries.ts';
import { useCommand } from '../app/command-keys.ts';
import { keyOf } from '../app/commands.ts';
import { go } from '../app/place.ts';
import { openSearch } from '../app/search.ts';
import { Button } from '../ui/Button.tsx';
import { Choice, type ChoiceOption } from '../ui/Choice.tsx';
import { ErrorNote, type ErrorWords } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import { hoursWords, today } from '../ui/words.ts';
import { meterInNow } from './meter-now.ts';
import { NewMeter } from './NewMeter.tsx';
import { highestHours } from './newest-first.ts';
import { VisitForm } from './VisitForm.tsx';
import { emptyVisitDraft, isDate, visitInput } from './visit-draft.ts';

type Reason = 'changed' | 'misread' | 'wrong-machine';

const reasons: readonly ChoiceOption<Reason>[] = [
  { value: 'changed', words: 'The meter was changed', keyCap: '1' },
  { value: 'misread', words: 'One of the two was misread', keyCap: '2' },
  { value: 'wrong-machine', words: 'This is another machine', keyCap: '3' },
];

interface OpenVisitPanelProps {
  readonly page: MachinePage;
  readonly visits: readonly MachineVisit[];
  readonly onClose: () => void;
}

/** The machine has come back: what is said, and the hours, which do not fall without a reason. */
export function OpenVisitPanel({ page, visits, onClose }: OpenVisitPanelProps) {
  const [draft, setDraft] = useState(() => emptyVisitDraft(today(), visits[0]?.visit.use));
  const [reason, setReason] = useState<Reason | null>(null);
  const open = useChange('visit.open');
  const keepAnswer = useKeepAnswer();
  const before = highestHours(visits);
  const hasFallen = open.error?.wire.code === 'hours-fall';

  const write = (meterId: string | null = meterInNow(page.meters)?.id ?? null) =>
    open.run(visitInput(draft, page.machine.id, meterId), (record) => {
      keepAnswer('visit.get', { id: record.visit.id }, record);
      go({ name: 'visit', visitId: record.visit.id, page: 'page' });
    });
  const isReady = !open.isRunning && isDate(draft.date);
  useCommand('takeIn.finish', () => write(), isReady);
  const choose = (chosen: Reason) => {
    setReason(chosen);
    if (chosen === 'wrong-machine') {
      onClose();
      openSearch();
    }
  };
  const change = (next: typeof draft) => {
    setDraft(next);
    if (next.hours !== draft.hours || next.isEstimate !== draft.isEstimate) {
      open.forgetError();
      setReason(null);
    }
  };

  return (
    <Panel
      title={visits.length === 0 ? 'Open a visit' : 'It is here again'}
      onClose={onClose}
      wide
      foot={
        <Button look="primary" keyCap={keyOf('takeIn.finish')} disabled={!isReady} onPress={() => write()}>
          Open the visit
        </Button>
      }
    >
      <VisitForm
        draft={draft}
        onChange={change}
        hoursHint={before === null ? undefined : `Last time ${hoursWords(before)}.`}
        underHours={
          hasFallen ? (
            <WhyLess words={wordsOf(open.error)} reason={reason} onChoose={choose}>
              <NewMeter
                machineId={page.machine.id}
                meters={page.meters}
                trueHours={before}
                onDone={(meter) => write(meter.id)}
              />
            </WhyLess>
          ) : undefined
        }
      />
      {open.error !== null && !hasFallen && <ErrorNote {...wordsOf(open.error)} />}
    </Panel>
  );
}

interface WhyLessProps {
  readonly words: ErrorWords;
  readonly reason: Reason | null;
  readonly onChoose: (reason: Reason) => void;
  /** What a changed meter asks for. */
  readonly children: ReactNode;
}

/** Hours do not fall by themselves: one of three things has happened. */
function WhyLess({ words, reason, onChoose, children }: WhyLessProps) {
  return (
    <>
      <ErrorNote happened={words.happened} kept="What you typed still stands above." />
      <Choice label="Why does it show less?" layout="column" options={reasons} value={reason} onChoose={onChoose} />
      {reason === 'changed' && children}
      {reason === 'misread' && (
        <p>
          Read it once more and type it above. If it was the last visit that was misread, open that visit and put its
          hours right; if nobody can tell, tick {'\u201C'}only an estimate{'\u201D'}.
        </p>
      )}
    </>
  );
}
