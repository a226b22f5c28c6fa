import { useState } from 'react';
import type { DecisionKind, Signature } from '../../shared-lib/choices/records.ts';
import {
  completedWords,
  type Reader,
  readBack,
  statementOnChoice,
  statementOnFinding,
} from '../../shared-lib/choices/statement.ts';
import type { VisitChoices } from '../../shared-lib/contract/choices.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import { go } from '../app/place.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { classNames } from '../ui/class-names.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import painted from '../ui/painted.module.css';
import laidOut from '../ui/panes.module.css';
import { TextField } from '../ui/TextField.tsx';
import pageStyles from './ChoicesPage.module.css';
import { Endings } from './Endings.tsx';
import styles from './ReadBackLeaf.module.css';
import { ShownPhotos } from './ShownPhotos.tsx';
import { SignatureBox } from './SignatureBox.tsx';
import type { Subject } from './subject.ts';
import { DecidedBefore, LeftToDecide } from './ToDecide.tsx';

interface ReadBackLeafProps {
  readonly record: VisitRecord;
  readonly choices: VisitChoices;
  readonly subject: Subject;
}

/** How the blank stands now; null while nobody has said how it ends. */
interface Ended {
  readonly decision: DecisionKind;
  readonly completed: string;
}

const waysOfTelling = ['at the bench', 'by phone', 'in a message'] as const;

/** A statement that the owner completes: it is read to them as it stands here, and kept as it was read. */
export function ReadBackLeaf({ record, choices, subject }: ReadBackLeafProps) {
  const visitId = record.visit.id;
  const { shop } = useAppState();
  const take = useChange('decision.take');
  const [by, setBy] = useState(record.owner?.name ?? '');
  const [capacity, setCapacity] = useState(record.owner?.capacity ?? '');
  const [howTold, setHowTold] = useState<(typeof waysOfTelling)[number] | null>(null);
  const [shown, setShown] = useState<ReadonlySet<string>>(new Set());
  const [ended, setEnded] = useState<Ended | null>(null);
  const [words, setWords] = useState('');
  const [signature, setSignature] = useState<Signature>([]);
  const [unsignedBecause, setUnsignedBecause] = useState('');

  const finding = subject.kind === 'finding' ? subject.finding : null;
  const line = record.standing.lines.find(({ findingId }) => findingId === finding?.id);
  const photos = record.shots.filter(({ id }) => shown.has(id)).map(({ sequence }) => sequence);
  const reader: Reader = {
    by: by.trim() === '' ? 'the owner' : by.trim(),
    capacity,
    date: record.visit.date,
    photos: photos.toSorted((a, b) => a - b),
    howTold: howTold ?? '',
    shopWords: shop.statementWords,
  };
  const statement =
    subject.kind === 'finding'
      ? statementOnFinding(subject.finding, record.standing, reader)
      : statementOnChoice(subject.choice, record.standing, { currency: choices.money.currency, reader });
  const asks = statement.endings.find(({ decision }) => decision === ended?.decision)?.asks ?? null;
  const isRefusal = ended?.decision === 'refused-by-mechanic';
  const isCompleted = ended !== null && ((asks === null && !isRefusal) || ended.completed.trim() !== '');
  const isSigned = signature.length > 0 || unsignedBecause.trim() !== '';
  const leave = () => go({ name: 'visit', visitId, page: 'choices' });

  const keep = () => {
    if (ended === null) return;
    const about = subject.kind === 'finding' ? { findingId: subject.finding.id } : { choiceId: subject.choice.id };
    take.run(
      {
        visitId,
        ...about,
        ...ended,
        words,
        by: reader.by,
        capacity,
        howTold: howTold ?? '',
        shownShotIds: [...shown],
        statement: readBack(statement, ended.decision, ended.completed),
        signature: signature.length === 0 ? null : signature,
        unsignedBecause: signature.length === 0 ? unsignedBecause : '',
      },
      leave,
    );
  };

  return (
    <div className={classNames(laidOut.panes, laidOut.underPanels, pageStyles.panes)}>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long statement is scrolled through by keyboard */}
      <section className={laidOut.desk} aria-label="The statement" tabIndex={0}>
        <article className={styles.leaf}>
          <header className={styles.head}>
            {line !== undefined && (
              <TagPlate
                number={line.number}
                tier={line.tier}
                state={line.state}
                height={38}
                label={`Finding ${line.number}:`}
              />
            )}
            <h1>Read this back to {reader.by}</h1>
          </header>
          <div className={styles.statement}>
            <p>{statement.shown}</p>
            <p>
              {statement.told.join(' ')} {statement.consequence !== '' && <strong>{statement.consequence}</strong>}
            </p>
            {statement.advised !== '' && <p>{statement.advised}</p>}
            {isRefusal ? (
              <p>The mechanic refuses what was asked.</p>
            ) : (
              <p className={styles.blankLine}>
                {statement.opens}{' '}
                {ended === null ? (
                  <span className={`${styles.blank} ${painted.painted}`}>how does it end?</span>
                ) : (
                  <span className={styles.filled}>{completedWords(statement, ended.decision, ended.completed)}.</span>
                )}
              </p>
            )}
            <Endings
              endings={statement.endings}
              picked={ended?.decision ?? null}
              completed={ended?.completed ?? ''}
              onPick={(decision) => setEnded({ decision, completed: '' })}
              onComplete={(completed) => setEnded((now) => (now === null ? null : { ...now, completed }))}
            />
            {statement.understood !== '' && <p>{statement.understood}</p>}
            {statement.closing !== '' && <p>{statement.closing}</p>}
          </div>
          <div className={styles.fields}>
            <TextField label="Who decides" value={by} onChange={setBy} maxLength={200} />
            <TextField label="As what" value={capacity} onChange={setCapacity} maxLength={200} />
          </div>
          <Choice
            label="How it was told"
            options={waysOfTelling.map((value) => ({ value, words: value }))}
            value={howTold}
            onChoose={setHowTold}
          />
          <div className={styles.fields}>
            <TextField label="In their own words" value={words} onChange={setWords} lines="many" maxLength={1000} />
            <div className={styles.signed}>
              <SignatureBox by={reader.by} strokes={signature} onChange={setSignature} />
              {signature.length === 0 && (
                <TextField
                  label="Or why it is not signed"
                  value={unsignedBecause}
                  onChange={setUnsignedBecause}
                  maxLength={400}
                />
              )}
            </div>
          </div>
          {isRefusal ? (
            <TextField
              label="What the mechanic refuses, and why"
              value={ended.completed}
              onChange={(completed) => setEnded({ decision: 'refused-by-mechanic', completed })}
              maxLength={400}
            />
          ) : (
            <Button look="link" onPress={() => setEnded({ decision: 'refused-by-mechanic', completed: '' })}>
              What was asked is refused by the mechanic
            </Button>
          )}
          {take.error !== null && <ErrorNote {...wordsOf(take.error)} />}
          <div className={styles.foot}>
            <Button
              look={isCompleted ? 'primary' : 'plain'}
              onPress={keep}
              disabled={!isCompleted || !isSigned || by.trim() === '' || take.isRunning}
            >
              Keep it as it was read
            </Button>
            <Button look="link" onPress={leave}>
              Back to the choices
            </Button>
            {isCompleted && !isSigned && <span className="soft">A signature is missing, or why there is none.</span>}
          </div>
        </article>
      </section>
      <aside className={classNames(laidOut.side, pageStyles.side)} aria-label="Decisions">
        <ShownPhotos record={record} finding={finding} shown={shown} onChange={setShown} />
        <DecidedBefore choices={choices} reading={finding?.id ?? null} />
        <LeftToDecide record={record} choices={choices} reading={finding?.id ?? null} />
      </aside>
    </div>
  );
}
