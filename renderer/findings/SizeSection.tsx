import { defectOf } from '../../shared-lib/defects/index.ts';
import type { Quantity } from '../../shared-lib/model/quantity.ts';
import { quantityKind } from '../../shared-lib/quantities/dictionary.ts';
import { showQuantity } from '../../shared-lib/quantities/show-quantity.ts';
import { useAppState } from '../app/app-state.ts';
import { MarkSizes } from '../measuring/MarkSizes.tsx';
import { Choice } from '../ui/Choice.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import styles from './FindingCard.module.css';
import type { SectionProps } from './section.ts';

type Origin = Quantity['origin'];

const origins: readonly { value: Origin; words: string }[] = [
  { value: 'measured', words: 'measured' },
  { value: 'photo', words: 'from a photo' },
  { value: 'estimate', words: 'estimated' },
  { value: 'owner-reported', words: 'the owner says' },
];

const leakWays = ['drops counted', 'caught and measured', 'estimated'] as const;

/** How big: the quantities that belong to the kind. Typed as it is read; kept as typed. */
export function SizeSection({ record, finding, edit }: SectionProps) {
  const { shop } = useAppState();
  const defect = defectOf(finding.defect);
  const ids = [...new Set([...(defect?.quantities ?? []), ...Object.keys(finding.quantities)])];
  const isMeasured = record.marks.some(
    ({ id, findingId }) => findingId === finding.id && record.sizes.some(({ markId }) => markId === id),
  );
  if (ids.length === 0 && !isMeasured) return null;
  const quantities = Object.values(finding.quantities);
  const origin = quantities[0]?.origin ?? null;
  const leak = finding.quantities.leak;
  const write = (id: string, typed: string) =>
    edit({
      quantities: {
        [id]: typed.trim() === '' ? null : { typed, origin: finding.quantities[id]?.origin ?? origin ?? 'measured' },
      },
    });
  return (
    <section className={styles.section} aria-label="How big">
      <h3 className={styles.heading}>How big</h3>
      <MarkSizes
        record={record}
        finding={finding}
        onUse={(quantity, fromMark, measure) => edit({ quantities: { [quantity]: { fromMark, measure } } })}
      />
      {ids.map((id) => {
        const kind = quantityKind(id);
        const quantity = finding.quantities[id];
        const isWord = kind !== null && kind.answers !== undefined;
        if (isWord) {
          return (
            <Choice
              key={id}
              label={kind.label}
              value={quantity?.typed ?? null}
              onChoose={(typed) => write(id, typed)}
              options={(kind.answers ?? []).map((answer) => ({ value: answer, words: answer }))}
            />
          );
        }
        return (
          <NumberField
            key={id}
            label={kind?.label ?? id}
            unit={kind?.unit}
            value={quantity?.typed ?? ''}
            onCommit={(typed) => write(id, typed)}
            hint={readBack(quantity, shop.units)}
            error={
              quantity !== undefined && quantity.value === null
                ? { happened: 'Not one number.', kept: 'Kept as you typed it; it counts once it is one number.' }
                : undefined
            }
            maxLength={60}
          />
        );
      })}
      {leak !== undefined && (
        <Choice
          label="How the leak was measured"
          value={leak.how ?? null}
          onChoose={(how) =>
            edit({
              quantities: { leak: { typed: leak.typed, origin: how === 'estimated' ? 'estimate' : 'measured', how } },
            })
          }
          options={leakWays.map((way) => ({ value: way, words: way }))}
        />
      )}
      {quantities.length > 0 && (
        <Choice
          label="These numbers are"
          value={origin}
          onChoose={(chosen) =>
            edit({
              quantities: Object.fromEntries(
                Object.entries(finding.quantities).map(([id, { typed, how }]) => [
                  id,
                  { typed, origin: chosen, ...(how === undefined ? {} : { how }) },
                ]),
              ),
            })
          }
          options={origins}
        />
      )}
    </section>
  );
}

/** How it was understood, where that is not plain from what was typed. */
function readBack(quantity: Quantity | undefined, units: 'metric' | 'us'): string | undefined {
  if (quantity === undefined || quantity.value === null) return undefined;
  const shown = showQuantity(quantity, units);
  return shown.replace(/\s/g, '') === quantity.typed.replace(/\s/g, '') ? undefined : `Read as ${shown}.`;
}
