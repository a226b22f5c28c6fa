import type { Reading } from '../../model/reading.ts';
import { sheetName } from '../../wording/report.ts';
import type { ReportContext } from '../context.ts';
import { sayMoment } from '../dates.ts';
import type { ReadingBlock, ReadingsSection } from '../model.ts';
import { sayResultLine, sayTyped } from '../reading-words.ts';
import { asPart, asSentence } from '../sentence.ts';

function blockOf(reading: Reading, context: ReportContext): ReadingBlock {
  const conditions = sayTyped(reading.conditions);
  const inputs = sayTyped(reading.inputs);
  const notTaken = reading.notTakenBecause;
  return {
    sheet: sheetName(reading.sheet),
    place: `${context.place(reading.at)}. ${sayMoment({ atMs: reading.takenAtMs, zoneOffsetMin: context.zoneOffsetMin })}`,
    lines: reading.results.map((result) => sayResultLine(result, context.shop.units)),
    notes: [
      ...(inputs === '' ? [] : [asSentence(`read: ${inputs}`)]),
      ...(conditions === '' ? [] : [asSentence(`conditions: ${conditions}`)]),
      ...(reading.remark.trim() === '' ? [] : [asSentence(reading.remark)]),
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
    columns: ['What', 'Value', 'Limit', 'Whose limit', 'Verdict'],
    blocks: all.map((reading) => blockOf(reading, context)),
    note: 'Within and beyond are said only where the reading clears the limit by what it can be off by (±); else it is too close to tell.',
  };
}
