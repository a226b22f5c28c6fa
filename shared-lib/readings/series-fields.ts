import type { MeterReading } from '../model/visit.ts';
import { unitFor } from '../quantities/show-quantity.ts';
import { convert, convertDifference, type UnitSystem, unitNamed } from '../quantities/units.ts';
import { sheetOf } from '../sheets/index.ts';
import type { ReadingSeries } from '../trends/gather-series.ts';
import { isDifference } from './result-kind.ts';

const written = (value: number): string => String(Number(value.toPrecision(6)));

/** A series as the sheet of hours and trend takes it, in the shop's units; its limits with it. */
export function seriesFields(series: ReadingSeries, system: UnitSystem): Record<string, string> {
  const [from, to] = [unitNamed(series.unit), unitNamed(unitFor(series.unit, system))];
  const across = isDifference(sheetOf(series.sheet), series.of) ? convertDifference : convert;
  const inShop = (value: number): number => (from === null || to === null ? value : (across(value, from, to) ?? value));
  const edge = (value: number | null): string => (value === null ? '' : written(inShop(value)));
  return {
    series: series.points.map(({ hours, value }) => `${written(hours)} / ${written(inShop(value))}`).join('\n'),
    seriesUnit: from === null || to === null ? series.unit : to.symbol,
    // The side the line runs to is for the readings to say, so both edges go in where there are two.
    most: edge(series.limit.max),
    least: edge(series.limit.min),
  };
}

interface Hours {
  readonly meter: MeterReading;
  readonly offsetHours: number;
  readonly date: string;
  /** The stay before whose hours are known. */
  readonly before: { readonly date: string; readonly hours: number } | null;
}

const dayMs = 86_400_000;

/** The hour meter of a visit as the same sheet takes it. */
export function hoursFields({ meter, offsetHours, date, before }: Hours): Record<string, string> {
  if (meter.reading === null) return {};
  return {
    reading: written(meter.reading),
    ...(offsetHours === 0 ? {} : { offset: written(offsetHours) }),
    ...(before === null
      ? {}
      : {
          before: written(before.hours),
          days: String(Math.round((Date.parse(date) - Date.parse(before.date)) / dayMs)),
        }),
  };
}
