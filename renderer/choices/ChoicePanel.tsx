import { useState } from 'react';
import { type WorkStepKind, workSteps } from '../../shared-lib/cautions/work-step.ts';
import { sayMoney } from '../../shared-lib/choices/money.ts';
import { costKinds, Decimal, Money } from '../../shared-lib/choices/records.ts';
import { costWords } from '../../shared-lib/choices/words.ts';
import type { ChoiceView } from '../../shared-lib/contract/choices.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { Panel } from '../ui/Panel.tsx';
import selecting from '../ui/select.module.css';
import { TextField } from '../ui/TextField.tsx';
import styles from './ChoicePanel.module.css';

interface ChoicePanelProps {
  readonly choice: ChoiceView;
  readonly money: Money;
  readonly visitId: string;
  readonly onClose: () => void;
}

/** A decimal comma is one; what does not read as a number is left as typed and refused. */
const asDecimal = (text: string): string =>
  text
    .trim()
    .replaceAll(/[\s\u202f]/g, '')
    .replace(',', '.');

const wrongNumber = (text: string) =>
  text.trim() === '' || Decimal.safeParse(asDecimal(text)).success
    ? undefined
    : { happened: 'This is no number.', kept: 'What you typed still stands here.' };

/** Name, conditions, work and costs of one choice. */
export function ChoicePanel({ choice, money, visitId, onClose }: ChoicePanelProps) {
  const { id } = choice;
  const change = useChange('choice.change');
  const remove = useChange('choice.remove');
  const errors = [change.error, remove.error].filter((error) => error !== null);
  return (
    <Panel title={choice.name} onClose={onClose}>
      <TextField label="Name" value={choice.name} onCommit={(name) => change.run({ id, name })} maxLength={120} />
      <TextField
        label="On condition that"
        value={choice.conditions}
        onCommit={(conditions) => change.run({ id, conditions })}
        lines="many"
        maxLength={1000}
      />
      <TextField
        label="Stop and ask when"
        value={choice.holdPoints}
        onCommit={(holdPoints) => change.run({ id, holdPoints })}
        lines="many"
        maxLength={1000}
      />
      <Costs choice={choice} money={money} />
      <MoneyFields money={money} visitId={visitId} />
      <Steps choice={choice} />
      {choice.cautions.length > 0 && (
        <section aria-label="Cautions that follow">
          <h3 className={styles.heading}>Cautions that follow</h3>
          <ul>
            {choice.cautions.map((caution) => (
              <li key={caution.id} className={styles.line}>
                <span>
                  <strong>{caution.word}</strong> {caution.text}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {errors.map((error) => (
        <ErrorNote key={error.message} {...wordsOf(error)} />
      ))}
      <Button look="link" onPress={() => remove.run({ id }, onClose)}>
        Take this choice off
      </Button>
    </Panel>
  );
}

const currencyOf = (text: string): string => text.trim().toUpperCase();

const wrongCurrency = (text: string) =>
  Money.shape.currency.safeParse(currencyOf(text)).success
    ? undefined
    : { happened: 'Not three letters, such as EUR.', kept: 'What you typed still stands here.' };

/** What the prices are in, for all choices of the visit. What does not read is not written. */
function MoneyFields({ money, visitId }: { readonly money: Money; readonly visitId: string }) {
  const set = useChange('money.set');
  const [wrong, setWrong] = useState<{ readonly [field in keyof Money]?: ReturnType<typeof wrongNumber> }>({});
  const writeCurrency = (text: string) => {
    const error = wrongCurrency(text);
    setWrong((now) => ({ ...now, currency: error }));
    if (error === undefined) set.run({ visitId, currency: currencyOf(text) });
  };
  const writeTax = (text: string) => {
    const error = wrongNumber(text);
    setWrong((now) => ({ ...now, taxPercent: error }));
    if (error === undefined) set.run({ visitId, taxPercent: text.trim() === '' ? null : asDecimal(text) });
  };
  return (
    <>
      <div className={styles.pair}>
        <TextField
          label="Currency, three letters"
          value={money.currency}
          onCommit={writeCurrency}
          error={wrong.currency}
          maxLength={3}
        />
        <NumberField label="Tax" unit="%" value={money.taxPercent ?? ''} onCommit={writeTax} error={wrong.taxPercent} />
      </div>
      {set.error !== null && <ErrorNote {...wordsOf(set.error)} />}
    </>
  );
}

function Costs({ choice, money }: { readonly choice: ChoiceView; readonly money: Money }) {
  const add = useChange('choice.addCost');
  const remove = useChange('choice.removeCost');
  const [kind, setKind] = useState<(typeof costKinds)[number]>('parts');
  const [words, setWords] = useState('');
  const [amount, setAmount] = useState('1');
  const [price, setPrice] = useState('');
  const isReady = [amount, price].every((text) => Decimal.safeParse(asDecimal(text)).success);
  const write = () =>
    add.run({ id: choice.id, kind, words, amount: asDecimal(amount), price: asDecimal(price) }, () => {
      setWords('');
      setAmount('1');
      setPrice('');
    });
  return (
    <section aria-label="Costs" className={styles.costs}>
      <h3 className={styles.heading}>Costs</h3>
      <ul>
        {choice.costs.map((line, index) => (
          <li key={line.id} className={styles.line}>
            <span>
              {costWords[line.kind]}
              {line.words !== '' && `, ${line.words}`}
              {line.amount !== '1' && ` (${line.amount} × ${line.price})`}
            </span>
            <span className={styles.sum}>{sayMoney(choice.cost.lines[index] ?? '', money.currency)}</span>
            <Button
              look="link"
              label={`Take off ${costWords[line.kind]} ${line.words}`}
              onPress={() => remove.run({ id: choice.id, costId: line.id })}
            >
              Take off
            </Button>
          </li>
        ))}
      </ul>
      {choice.cost.tax !== null && <p className={styles.total}>Tax {sayMoney(choice.cost.tax, money.currency)}</p>}
      {choice.costs.length > 0 && <p className={styles.total}>In all {sayMoney(choice.cost.total, money.currency)}</p>}
      <Choice
        label="A line of"
        options={costKinds.map((value) => ({ value, words: costWords[value] }))}
        value={kind}
        onChoose={setKind}
      />
      <TextField label="What" value={words} onChange={setWords} maxLength={200} />
      <div className={styles.pair}>
        <NumberField
          label={kind === 'labour' ? 'Hours' : 'How many'}
          value={amount}
          onChange={setAmount}
          error={wrongNumber(amount)}
        />
        <NumberField
          label={kind === 'labour' ? 'Rate' : 'Price of one'}
          value={price}
          onChange={setPrice}
          error={wrongNumber(price)}
        />
      </div>
      {add.error !== null && <ErrorNote {...wordsOf(add.error)} />}
      <Button onPress={write} disabled={!isReady || add.isRunning}>
        Write the line
      </Button>
    </section>
  );
}

function Steps({ choice }: { readonly choice: ChoiceView }) {
  const add = useChange('choice.addStep');
  const remove = useChange('choice.removeStep');
  const kinds = Object.keys(workSteps) as WorkStepKind[];
  return (
    <section aria-label="Work it needs">
      <h3 className={styles.heading}>Work it needs</h3>
      <ul>
        {choice.steps.map(({ id, step }) => (
          <li key={id} className={styles.line}>
            <span>{workSteps[step]}</span>
            <Button
              look="link"
              label={`Take off ${workSteps[step]}`}
              onPress={() => remove.run({ id: choice.id, stepId: id })}
            >
              Take off
            </Button>
          </li>
        ))}
      </ul>
      <select
        className={selecting.select}
        aria-label="Add work it needs"
        value=""
        onChange={(event) => {
          const step = kinds.find((kind) => kind === event.target.value);
          if (step !== undefined) add.run({ id: choice.id, step });
        }}
      >
        <option value="">add work ...</option>
        {kinds.map((kind) => (
          <option key={kind} value={kind}>
            {workSteps[kind]}
          </option>
        ))}
      </select>
      {add.error !== null && <ErrorNote {...wordsOf(add.error)} />}
    </section>
  );
}
