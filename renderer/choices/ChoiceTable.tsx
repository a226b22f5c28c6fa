import { useState } from 'react';
import { sayMoney } from '../../shared-lib/choices/money.ts';
import {
  type ChoiceDisposition,
  type DispositionIs,
  dispositionKinds,
  judgeable,
} from '../../shared-lib/choices/records.ts';
import { dispositionWords, firstNames } from '../../shared-lib/choices/words.ts';
import type { ChoiceView, VisitChoices } from '../../shared-lib/contract/choices.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { tierWords } from '../../shared-lib/judgement/tiers.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { go } from '../app/place.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { LadderRule } from '../ui/LadderRule.tsx';
import { ChoicePanel } from './ChoicePanel.tsx';
import styles from './ChoiceTable.module.css';
import { JudgeAnewPanel } from './JudgeAnewPanel.tsx';

interface ChoiceTableProps {
  readonly record: VisitRecord;
  readonly choices: VisitChoices;
}

/** One list of findings downwards, and for each choice what it leaves of them; none is put forward. */
export function ChoiceTable({ record, choices: { choices, decisions, money } }: ChoiceTableProps) {
  const { lines } = record.standing;
  const visitId = record.visit.id;
  const add = useChange('choice.add');
  const dispose = useChange('choice.dispose');
  const [openId, setOpenId] = useState<string | null>(null);
  const open = choices.find(({ id }) => id === openId);
  const [anew, setAnew] = useState<{ readonly choiceId: string; readonly findingId: string } | null>(null);
  const decided = new Set(decisions.map(({ choiceId }) => choiceId));
  const nextName = firstNames.find((name) => !choices.some((choice) => choice.name === name)) ?? 'another way';
  const error = add.error ?? dispose.error;

  if (lines.length === 0)
    return <p className={styles.empty}>There is nothing to choose from yet: no finding is ranked in this visit.</p>;
  return (
    <div className={styles.leaf}>
      <header className={styles.head}>
        <h1>The choices</h1>
        <Button onPress={() => add.run({ visitId, name: nextName })} disabled={add.isRunning}>
          Write a choice
        </Button>
      </header>
      {error !== null && <ErrorNote {...wordsOf(error)} />}
      {choices.length === 0 && (
        <p className={styles.empty}>
          Two to four ways to go on stand here side by side. In each, every finding is mended, left or something in
          between, and what it leaves is ranked again.
        </p>
      )}
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col" className={styles.findings}>
              Finding
            </th>
            {choices.map((choice) => (
              <th key={choice.id} scope="col">
                <span className={styles.name}>{choice.name}</span>
                <Worst choice={choice} />
                {choice.chosen && <span className={styles.taken}>the owner took this</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map(({ findingId, number, tier, state, title }) => (
            <tr key={findingId}>
              <th scope="row" className={styles.findings}>
                <span className={styles.finding}>
                  <TagPlate number={number} tier={tier} state={state} label={`Finding ${number}:`} />
                  <span>{title}</span>
                </span>
              </th>
              {choices.map((choice) => (
                <td key={choice.id}>
                  <DispositionCell
                    label={`“${choice.name}”: finding ${number}`}
                    disposition={choice.dispositions.find((each) => each.findingId === findingId)}
                    isSaid={!choice.unspoken.includes(findingId)}
                    isDecided={decided.has(choice.id)}
                    onChoose={(is) => dispose.run({ id: choice.id, findingId, is })}
                    onJudge={() => setAnew({ choiceId: choice.id, findingId })}
                  />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        {choices.length > 0 && (
          <tfoot>
            <tr>
              <th scope="row">Leaves</th>
              {choices.map((choice) => (
                <td key={choice.id}>
                  <Leaves choice={choice} record={record} />
                </td>
              ))}
            </tr>
            <tr>
              <th scope="row">Comes to</th>
              {choices.map(({ id, costs, cost }) => (
                <td key={id} className={styles.sum}>
                  {costs.length === 0 ? (
                    <span className="soft">no price yet</span>
                  ) : (
                    sayMoney(cost.total, money.currency)
                  )}
                </td>
              ))}
            </tr>
            <tr>
              <td />
              {choices.map((choice) => (
                <td key={choice.id}>
                  <div className={styles.actions}>
                    <Button
                      label={`Read back “${choice.name}”`}
                      onPress={() => go({ name: 'visit', visitId, page: 'choices', choiceId: choice.id })}
                    >
                      Read it back
                    </Button>
                    {!decided.has(choice.id) && (
                      <Button
                        look="link"
                        label={`Costs and work of “${choice.name}”`}
                        onPress={() => setOpenId(choice.id)}
                      >
                        Costs and work
                      </Button>
                    )}
                  </div>
                </td>
              ))}
            </tr>
          </tfoot>
        )}
      </table>
      {open !== undefined && (
        <ChoicePanel key={open.id} choice={open} money={money} visitId={visitId} onClose={() => setOpenId(null)} />
      )}
      {anew !== null && <Anew {...anew} record={record} choices={choices} onClose={() => setAnew(null)} />}
    </div>
  );
}

interface AnewProps {
  readonly choiceId: string;
  readonly findingId: string;
  readonly record: VisitRecord;
  readonly choices: readonly ChoiceView[];
  readonly onClose: () => void;
}

function Anew({ choiceId, findingId, record, choices, onClose }: AnewProps) {
  const choice = choices.find(({ id }) => id === choiceId);
  const finding = record.findings.find(({ id }) => id === findingId);
  const disposition = choice?.dispositions.find((each) => each.findingId === findingId);
  if (choice === undefined || finding === undefined || disposition === undefined) return null;
  return (
    <JudgeAnewPanel
      key={`${choiceId}/${findingId}`}
      choice={choice}
      finding={finding}
      disposition={disposition}
      onClose={onClose}
    />
  );
}

/** The worst that stays, at the head of its column: a choice that leaves danger never looks harmless. */
function Worst({ choice: { left } }: { readonly choice: ChoiceView }) {
  const worst = left[0]?.tier;
  if (worst === undefined) return <span className={styles.taken}>leaves nothing of what was found</span>;
  return (
    <span className={styles.worst} data-danger={worst === 0 || undefined}>
      leaves: {tierWords(worst).words}
    </span>
  );
}

interface DispositionCellProps {
  readonly label: string;
  readonly disposition: ChoiceDisposition | undefined;
  /** Nobody has spoken of it in this choice: it counts as left. */
  readonly isSaid: boolean;
  readonly isDecided: boolean;
  readonly onChoose: (is: DispositionIs) => void;
  readonly onJudge: () => void;
}

function DispositionCell({ label, disposition, isSaid, isDecided, onChoose, onJudge }: DispositionCellProps) {
  const { is = 'left', after = null, why = '' } = disposition ?? {};
  const anew = after === null ? null : `judged anew${why === '' ? '' : `: ${why}`}`;
  if (isDecided)
    return (
      <span className={styles.fixed}>
        {dispositionWords[is]}
        {anew !== null && <span className={styles.anew}>{anew}</span>}
      </span>
    );
  return (
    <>
      <DispositionSelect label={label} is={isSaid ? is : null} onChoose={onChoose} />
      {judgeable.has(is) && (
        <>
          {anew !== null && <span className={styles.anew}>{anew}</span>}
          <Button look="link" label={`${label}: judge it anew`} onPress={onJudge}>
            Judge it anew
          </Button>
        </>
      )}
    </>
  );
}

interface DispositionSelectProps {
  readonly label: string;
  /** Null while nobody has said. */
  readonly is: DispositionIs | null;
  readonly onChoose: (is: DispositionIs) => void;
}

function DispositionSelect({ label, is, onChoose }: DispositionSelectProps) {
  return (
    <select
      className={styles.select}
      data-stays={is !== 'fixed' || undefined}
      aria-label={label}
      value={is ?? ''}
      onChange={(event) => {
        const chosen = dispositionKinds.find((kind) => kind === event.target.value);
        if (chosen !== undefined) onChoose(chosen);
      }}
    >
      {is === null && <option value="">not said, so left</option>}
      {dispositionKinds.map((kind) => (
        <option key={kind} value={kind}>
          {dispositionWords[kind]}
        </option>
      ))}
    </select>
  );
}

function Leaves({ choice, record }: { readonly choice: ChoiceView; readonly record: VisitRecord }) {
  const numberOf = (id: string) => record.findings.find((finding) => finding.id === id)?.number ?? '?';
  if (choice.left.length === 0) return <span>nothing of what was found</span>;
  const tiers = [...new Set(choice.left.map(({ tier }) => tier))];
  return (
    <div className={styles.leaves}>
      {tiers.map((tier) => (
        <div key={tier}>
          <LadderRule rung={tier} word={tierWords(tier).heading} />
          <span className={styles.tags}>
            {choice.left
              .filter((line) => line.tier === tier)
              .map(({ findingId, number, state }) => (
                <TagPlate key={findingId} number={number} tier={tier} state={state} label={`finding ${number}`} />
              ))}
          </span>
        </div>
      ))}
      {choice.willReturn.map(({ findingId, rootsLeft }) => (
        <p key={findingId} className={styles.returns}>
          {numberOf(findingId)} will return: root left, {rootsLeft.map(numberOf).join(' and ')}
        </p>
      ))}
    </div>
  );
}
