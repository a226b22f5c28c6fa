import type { ResultLine } from '../model/reading.ts';
import type { Numbers, SheetOutcome } from './outcome.ts';

const digits = (value: Numbers): string =>
  [value]
    .flat()
    .map((each) => String(Number(each.toPrecision(6))))
    .join('/');

const withUnit = (value: Numbers, unit: string): string => `${digits(value)}${unit === '' ? '' : ` ${unit}`}`;

/** Results as the record keeps them: texts with units. */
export function toResultLines(outcome: SheetOutcome): ResultLine[] {
  return outcome.results.map((result): ResultLine => {
    const show = (value: number | undefined) => (value === undefined ? undefined : withUnit(value, result.unit));
    const { limit } = result;
    const edges = limit && {
      min: show(limit.min),
      max: show(limit.max),
      badBelow: show(limit.badBelow),
      badAbove: show(limit.badAbove),
      page: limit.page,
    };
    return {
      of: result.of,
      value: result.value === null ? null : withUnit(result.value, result.unit),
      seen: result.seen,
      limit: limit && {
        ...Object.fromEntries(Object.entries(edges ?? {}).filter(([, text]) => text !== undefined)),
        source: limit.source,
      },
      uncertainty: result.uncertainty === null ? null : withUnit(result.uncertainty, result.unit),
      uncertaintyFrom: result.uncertaintyFrom,
      verdict: result.verdict,
    };
  });
}
