import { sheet } from '../sheet-kind.ts';
import { cylinderLeakageSheet } from './sheet.ts';

/** Source: the handbook; common practice, no source. */
const paths: ReadonlyMap<string, string> = new Map([
  ['intake', 'Air at the intake: the intake valve.'],
  ['exhaust', 'Air at the exhaust: the exhaust valve.'],
  ['filler or dipstick', 'Air at the filler or dipstick: rings, bore or piston.'],
  [
    'radiator neck',
    'Bubbles at the neck: a path to the coolant, by gasket, crack or liner; which part is not shown. Repeat with the piston lower and the valves still shut to lay bare cracks further down.',
  ],
  ['neighbouring cylinder', 'Air in the next cylinder: the gasket between them.'],
]);

export const cylinderLeakage = sheet(
  cylinderLeakageSheet,
  (given) => {
    const [supply, cylinder] = [given.number('supply'), given.number('cylinder')];
    const path = paths.get(given.word('heard') ?? '');
    return {
      lines: supply === null || cylinder === null ? [] : [{ of: 'leak', value: (1 - cylinder / supply) * 100 }],
      says: path === undefined ? [] : [path],
      ...(given.word('piston') === 'not held' ? { void: 'the crank was not held at top dead centre' } : {}),
    };
  },
  (given) => {
    const [supply, cylinder] = [given.number('supply'), given.number('cylinder')];
    return supply !== null && cylinder !== null && cylinder > supply
      ? [{ input: 'cylinder', weight: 'impossible', what: 'A cylinder cannot hold more than is supplied to it.' }]
      : [];
  },
);
