import { describe, expect, it } from 'vitest';
import { compute } from '../../../../shared-lib/sheets/compute.ts';
import type { SheetInput } from '../../../../shared-lib/sheets/outcome.ts';
import { workedExamples } from './worked-examples.ts';

describe.each(workedExamples)('$sheet: $title', ({ sheet, input, wanted }) => {
  const outcome = compute(sheet, input);

  it('reads every field', () => expect(outcome.problems).toEqual([]));

  it.each(wanted.map((each) => [each.of, each] as const))('%s', (of, { value, within = 0, handbook, verdict }) => {
    const line = outcome.results.find((each) => each.of === of);
    expect(line, of).toBeDefined();
    if (value !== undefined) expect(Math.abs(Number(line?.value) - value)).toBeLessThanOrEqual(within);
    if (handbook !== undefined) {
      expect(Math.abs(Number(line?.crossCheck?.value ?? line?.value) - handbook)).toBeLessThanOrEqual(within);
    }
    if (verdict !== undefined) expect(line?.verdict).toBe(verdict);
  });
});

describe('specific gravity at 80 °F', () => {
  it.each([
    // Stored hydrometer table in wide public use; then US Army TM 5-3820-256-24-4's own rule.
    [1.25, 20, 1.226],
    [1.235, 100, 1.243],
  ])('%d read at %d °F is %d', (read, fahrenheit, corrected) => {
    const outcome = compute('MS-01', {
      inputs: { gravity: String(read) },
      conditions: { temperature: `${fahrenheit} °F` },
    });
    const line = outcome.results.find(({ of }) => of === 'gravity at 80 °F');
    expect(Math.abs(Number([line?.value ?? []].flat()[0]) - corrected)).toBeLessThanOrEqual(0.0005);
  });
});

describe('what the examples say beside their numbers', () => {
  // US Army TM 5-3895-359-14&P, table 2: a spread of more than 25 psi; cylinder 3 is the low one.
  it('445/440/405/435 psi lie more than 25 psi apart, by cylinder 3', () => {
    const outcome = compute('MS-10', {
      inputs: { raw: '445/440/405/435 psi' },
      limits: { difference: { max: '25 psi', source: 'maker', page: 'table 2' } },
    });
    const line = outcome.results.find(({ of }) => of === 'difference');
    expect(line?.value).toBeCloseTo((40 * 6.894757293) / 100, 6);
    expect(line?.verdict).toBe('beyond');
    expect(outcome.says).toContain('Lowest: cylinder 3.');
  });

  const says = (sheet: string, input: SheetInput) => compute(sheet, input).says.join(' ');

  it('good voltage and a slow engine point to cables or contacts', () =>
    expect(
      says('MS-03', {
        inputs: { volts: '10.30 V', current: '480 A', speed: '140 rpm', usualCurrent: '650 A', neededSpeed: '180 rpm' },
        conditions: { system: '12 V' },
      }),
    ).toMatch(/cables or contacts/));
  it('liner ratio, compression: 27.7/28.9/27.7/23.1 bar at sea level', () => {
    const line = compute('MS-10', { inputs: { raw: '24/25/24/20 bar' }, conditions: { altitude: '1200 m' } })
      .results[0];
    const found = [line?.crossCheck?.value ?? []].flat();
    for (const [index, printed] of [27.7, 28.9, 27.7, 23.1].entries()) {
      expect(Math.abs((found[index] ?? Number.NaN) - printed)).toBeLessThanOrEqual(0.05);
    }
  });
  it('one leak-back is 2.49 times the middle one', () => {
    const line = compute('MS-18', { inputs: { leakBack: '22/25/61/24 mL' } }).results[0];
    expect([line?.value ?? []].flat()[2]).toBeCloseTo(2.49, 2);
  });
  it('a pass of the combustion-gas test lists what it cannot rule out', () =>
    expect(says('MS-09', { inputs: { colour: 'no change' } })).toMatch(/below the rings at top dead centre/));
  it('a rod pushed in is never put down to its piston seal', () =>
    expect(
      says('MS-20', { inputs: { bore: '100', rod: '60', load: 'pushes rod in', drift: '18', time: '30' } }),
    ).toMatch(/nowhere to go/));
  it('three readings cannot tell the hours to a limit', () =>
    expect(says('MS-23', { inputs: { series: '4120 12; 4300 18; 4510 29', most: '40' } })).toMatch(
      /cannot be told from 3 readings.*251 h/s,
    ));
});
