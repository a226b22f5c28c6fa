import { useState } from 'react';
import type { MachinePage, MachineVisit } from '../../shared-lib/contract/machines.ts';
import { wordsOf } from '../api/client.ts';
import { useAnswer } from '../api/queries.ts';
import { useCommand } from '../app/command-keys.ts';
import { keyOf } from '../app/commands.ts';
import { go, lastPlaceIn } from '../app/place.ts';
import { WhoChip } from '../app/WhoChip.tsx';
import { Button } from '../ui/Button.tsx';
import { classNames } from '../ui/class-names.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Breadcrumb, Header, HeaderEnd, HeaderMiddle } from '../ui/Header.tsx';
import { Icon } from '../ui/Icon.tsx';
import { Plate } from '../ui/Plate.tsx';
import laidOut from '../ui/panes.module.css';
import { Waiting } from '../ui/Waiting.tsx';
import { dayWords } from '../ui/words.ts';
import { kindWords, machineName } from './floor-words.ts';
import { HourRule } from './HourRule.tsx';
import { LayoutPanel } from './LayoutPanel.tsx';
import styles from './MachinePlace.module.css';
import { MachineVisits } from './MachineVisits.tsx';
import { MetersPanel } from './MetersPanel.tsx';
import { plateFields } from './machine-plate.ts';
import { newestFirst } from './newest-first.ts';
import { OpenFindings } from './OpenFindings.tsx';
import { OpenVisitPanel } from './OpenVisitPanel.tsx';
import { OwnerPanel } from './OwnerPanel.tsx';
import { PartsPanel } from './PartsPanel.tsx';
import { PlatePanel } from './PlatePanel.tsx';

type Sheet = 'plate' | 'owner' | 'layout' | 'meters' | 'parts' | 'visit';

/** One machine: its plate, its hours, what is open on it, and its visits. */
export function MachinePlace({ machineId }: { readonly machineId: string }) {
  const page = useAnswer('machine.page', { id: machineId });
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const toFloor = { words: 'Floor', onGo: () => go({ name: 'floor' }) };

  const visits = page.data === undefined ? [] : newestFirst(page.data.visits);
  const openVisit = visits.find(({ visit }) => visit.leftAtMs === null);
  const goOn = () => {
    if (openVisit !== undefined) go(lastPlaceIn(openVisit.visit.id));
  };
  const isKnown = page.data !== undefined;
  useCommand('machine.goOn', goOn, openVisit !== undefined);
  useCommand('machine.openVisit', () => setSheet('visit'), isKnown && openVisit === undefined);

  return (
    <>
      <Header>
        <Breadcrumb trail={[toFloor]} here={page.data === undefined ? 'Machine' : machineName(page.data.machine)} />
        <HeaderMiddle />
        <HeaderEnd>
          {openVisit !== undefined && (
            <Button look="primary" onPress={goOn}>
              <span className={styles.goOn}>
                {`Go on with ${dayWords(openVisit.visit.date)}`}
                <Icon name="forward" />
              </span>
            </Button>
          )}
          {isKnown && openVisit === undefined && (
            <Button look="primary" keyCap={keyOf('machine.openVisit')} onPress={() => setSheet('visit')}>
              {visits.length === 0 ? 'Open a visit' : 'It is here again'}
            </Button>
          )}
          <WhoChip />
        </HeaderEnd>
      </Header>
      {page.isError && page.data === undefined && (
        <div className={styles.pane}>
          <ErrorNote {...wordsOf(page.error)}>
            <Button onPress={() => void page.refetch()}>Ask again</Button>
          </ErrorNote>
        </div>
      )}
      {page.data === undefined && !page.isError && <Waiting words="Fetching the machine ..." />}
      {page.data !== undefined && (
        <>
          <Band page={page.data} newest={visits[0]} onSheet={setSheet} />
          <Sheets page={page.data} visits={visits} sheet={sheet} onClose={() => setSheet(null)} />
          <div className={classNames(laidOut.panes, styles.panes)}>
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what was not looked at can be long, and holds nothing to tab to. */}
            <section className={styles.pane} aria-label="Open findings" tabIndex={0}>
              <OpenFindings visits={visits} />
            </section>
            <section className={`${styles.pane} ${styles.second}`} aria-label="Visits">
              <MachineVisits visits={visits} />
            </section>
          </div>
        </>
      )}
    </>
  );
}

interface BandProps {
  readonly page: MachinePage;
  readonly newest: MachineVisit | undefined;
  readonly onSheet: (sheet: Sheet) => void;
}

function Band({ page, newest, onSheet }: BandProps) {
  const { machine, layout, owner } = page;
  const withHours = newestFirst(page.visits).find(({ trueHours }) => trueHours !== null) ?? newest;
  return (
    <div className={styles.band}>
      <Plate
        size="large"
        title={kindWords(machine.kind)}
        fields={plateFields({
          plate: machine,
          layout: layout.layout,
          ownerName: owner?.name ?? '',
          ownerPlace: owner?.place ?? '',
          hours: withHours?.trueHours ?? null,
          isEstimate: withHours?.visit.meter.estimate ?? false,
        })}
      />
      <div className={styles.ruleCell}>
        <HourRule visits={page.visits} />
        <div className={styles.edits}>
          <Button look="link" onPress={() => onSheet('plate')}>
            Plate
          </Button>
          <Button look="link" onPress={() => onSheet('owner')}>
            Owner
          </Button>
          <Button look="link" onPress={() => onSheet('layout')}>
            Engine and parts
          </Button>
          <Button look="link" onPress={() => onSheet('meters')}>
            Hour meter
          </Button>
          <Button look="link" onPress={() => onSheet('parts')}>
            Fitted parts
          </Button>
        </div>
      </div>
    </div>
  );
}

interface SheetsProps {
  readonly page: MachinePage;
  readonly visits: readonly MachineVisit[];
  readonly sheet: Sheet | null;
  readonly onClose: () => void;
}

function Sheets({ page, visits, sheet, onClose }: SheetsProps) {
  switch (sheet) {
    case 'plate':
      return <PlatePanel machine={page.machine} onClose={onClose} />;
    case 'owner':
      return <OwnerPanel machineId={page.machine.id} owner={page.owner} onClose={onClose} />;
    case 'layout':
      return <LayoutPanel machineId={page.machine.id} layout={page.layout.layout} onClose={onClose} />;
    case 'meters':
      return <MetersPanel page={page} visits={visits} onClose={onClose} />;
    case 'parts':
      return <PartsPanel page={page} visits={visits} onClose={onClose} />;
    case 'visit':
      return <OpenVisitPanel page={page} visits={visits} onClose={onClose} />;
    case null:
      return null;
  }
}
