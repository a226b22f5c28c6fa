import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { at20C, metalNamed } from '../standards/expansion.ts';
import { spreadOf } from '../two-point-sizes.ts';
import { sizeAgainstLimitSheet } from './sheet.ts';

export const sizeAgainstLimit = sheet(sizeAgainstLimitSheet, (given) => {
  const typed = given.list('size');
  if (typed === null) return { lines: [] };
  const [temperatureC, metal, whenNew] = [
    given.number('temperature'),
    metalNamed(given.word('metal')),
    given.number('whenNew'),
  ];
  const sizes = temperatureC === null || metal === null ? typed : typed.map((each) => at20C(each, temperatureC, metal));
  const lines: ComputedLine<keyof typeof sizeAgainstLimitSheet.results>[] = [
    { of: 'smallest', value: Math.min(...sizes) },
    { of: 'largest', value: Math.max(...sizes) },
  ];
  if (sizes.length > 1) lines.push({ of: 'spread', value: spreadOf(sizes) });
  if (whenNew !== null) {
    const changes = sizes.map((each) => each - whenNew);
    lines.push({
      of: 'change',
      value: changes.reduce((worst, each) => (Math.abs(each) > Math.abs(worst) ? each : worst)),
    });
  }
  return { lines };
});
