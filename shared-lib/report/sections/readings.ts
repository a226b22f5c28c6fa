import type { Reading, ResultLine } from '../../model/reading.ts';
import { barsOfLine } from '../../readings/bars-of-line.ts';
import { barLimitX, barWidth, drawLimitBar } from '../../readings/limit-bar-drawing.ts';
import { outcomeOf } from '../../readings/outcome-of.ts';
import { plotOf } from '../../readings/plots/plot-of.ts';
import { type ResultKind, resultKindOf } from '../../readings/result-kind.ts';
import type { SheetOutcome, SheetResult } from '../../sheets/compute.ts';
import { sheetOf } from '../../sheets/index.ts';
import { listed } from '../../wording/listed.ts';
import { sheetName } from '../../wording/report.ts';
import type { ReportContext } from '../context.ts';
import { sayIsoDay, sayMoment } from '../dates.ts';
import type { JudgedLine, ReadingBlock, ReadingsSection } from '../model.ts';
import { sayResultLine, sayTyped, showResult } from '../reading-words.ts';
import { asPart, asSentence } from '../sentence.ts';
import { lineOf } from './diagrams.ts';

/** Formula, standard, the handbook's figure beside it, and why it may not be judged. */
function howOf(result: SheetResult | undefined, kind: ResultKind, context: ReportContext): string {
  if (result === undefined) return '';
  const { formula, basis, crossCheck, unit, voidBecause } = result;
  const beside = [crossCheck?.value ?? []].flat().map((value) => Number(value.toPrecision(6)));
  const cross =
    crossCheck === null
      ? ''
      : `; cross-check ${showResult(`${beside.join('/')}${unit === '' ? '' : ` ${unit}`}`, null, context.shop.units, kind)} by ${crossCheck.formula}`;
  return `${formula}${basis === null ? '' : `; ${basis}`}${cross}${voidBecause === null ? '' : `; void: ${voidBecause}`}`;
}

/** Draft or issued, the formulas are the sheet's; the numbers are the record's own. */
function outcome(reading: Reading, { record }: ReportContext): SheetOutcome | null {
  const { visit, layout } = record;
  return outcomeOf(reading, { conditions: visit.conditions, volts: layout.layout.volts, resolution: null });
}

function plotBlock(computed: SheetOutcome | null, { shop }: ReportContext): ReadingBlock['plot'] {
  const plot = plotOf(computed?.picture ?? null, shop.units);
  return plot && { title: plot.title, width: plot.width, height: plot.height, lines: plot.primitives.map(lineOf) };
}

function instrumentWords({ instrumentId }: Reading, { record }: ReportContext): string {
  const instrument = record.instruments?.find(({ id }) => id === instrumentId);
  if (instrument === undefined) return '';
  const { name, kind, resolution, lastCheck } = instrument;
  return [
    name,
    kind,
    resolution === '' ? '' : `reads to ${resolution}`,
    lastCheck === null ? 'when it was last checked is not written down' : `last checked on ${sayIsoDay(lastCheck)}`,
  ]
    .filter((each) => each.trim() !== '')
    .join(', ');
}

function judgedLine(
  reading: Reading,
  line: ResultLine,
  computed: SheetOutcome | null,
  context: ReportContext,
): JudgedLine {
  const kind = resultKindOf(reading, line.of);
  const result = computed?.results.find(({ of }) => of === line.of);
  const bars = barsOfLine(line, kind.isDifference);
  return {
    ...sayResultLine(line, context.shop.units, kind, howOf(result, kind, context)),
    bars: bars.map((bar) => drawLimitBar(bar, line.verdict, bars.length > 1)),
  };
}

function blockOf(reading: Reading, context: ReportContext): ReadingBlock {
  const sheet = sheetOf(reading.sheet);
  const computed = outcome(reading, context);
  const conditions = sayTyped(reading.conditions, sheet?.conditions);
  const inputs = sayTyped(reading.inputs, sheet?.inputs);
  const notTaken = reading.notTakenBecause;
  const instrument = instrumentWords(reading, context);
  const takenOver = Object.keys(reading.takenOver ?? {});
  const dials = context.shots.filter(({ id }) => reading.shotIds?.includes(id)).map(({ sequence }) => sequence);
  const taken = reading.results.filter(({ value, seen }) => value !== null || seen !== null);
  return {
    sheet: sheet?.name ?? sheetName(reading.sheet),
    place: `${context.place(reading.at)}. ${sayMoment({ atMs: reading.takenAtMs, zoneOffsetMin: context.zoneOffsetMin })}`,
    lines: (computed === null ? reading.results : taken).map((line) => judgedLine(reading, line, computed, context)),
    plot: plotBlock(computed, context),
    says: computed?.says ?? [],
    notes: [
      ...(inputs === '' ? [] : [asSentence(`read: ${inputs}`)]),
      ...(conditions === '' ? [] : [asSentence(`conditions: ${conditions}`)]),
      ...(reading.remark.trim() === '' ? [] : [asSentence(reading.remark)]),
      ...(instrument === '' ? [] : [asSentence(`taken with: ${instrument}`)]),
      ...(takenOver.length === 0
        ? []
        : [asSentence(`not measured here, taken over from somebody else’s paper: ${listed(takenOver)}`)]),
      ...(dials.length === 0 ? [] : [asSentence(`the dial is on photo ${dials.join(', ')}`)]),
      ...(notTaken === null ? [] : [asSentence(`not taken because: ${asPart(notTaken)}`)]),
    ],
  };
}

export function readings(context: ReportContext): ReadingsSection | null {
  const all = context.record.readings;
  if (all.length === 0) return null;
  return {
    kind: 'readings',
    heading: 'Readings',
    columns: ['What', 'Value', 'On the scale of its limit', 'Limit, and whose', 'Verdict'],
    barWidth,
    limitAt: barLimitX,
    blocks: all.map((reading) => blockOf(reading, context)),
    note: 'Within and beyond are said only where the reading clears the limit by what it can be off by (±); else it is too close to tell.',
  };
}
