import { defectOf } from '../defects/index.ts';
import type { Finding } from '../model/finding.ts';
import type { Layout } from '../model/layout.ts';
import { speakComponent } from '../parts/speak-component.ts';
import type { UnitSystem } from '../quantities/units.ts';

const uncapitalised = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What is said of it: the defect and its size, what was not looked for or not found, or the mechanic's own words. */
function saidOf(finding: Finding, system: UnitSystem): string {
  const defect = defectOf(finding.defect);
  if (defect === null) return finding.words.trim() === '' ? 'not said what it is' : finding.words.trim();
  if (finding.state === 'not-examined') return `not examined for ${defect.sought}`;
  if (finding.state === 'none-found') return `${defect.sought} not found`;
  return defect.speak(finding, system);
}

/** A finding in one short line: `Left boom hose: cover worn 25 mm`, `Exhaust seat, cylinder 3: crack 14 mm`. */
export function titleOf(finding: Finding, layout: Layout, system: UnitSystem = 'metric'): string {
  const said = saidOf(finding, system);
  const [first, second, ...others] = finding.locations.map((place) => speakComponent(place, layout));
  if (first === undefined) return capitalised(said);
  const places =
    second === undefined
      ? first
      : others.length === 0
        ? `${first} and ${uncapitalised(second)}`
        : `${first} and ${others.length + 1} more places`;
  return `${places}: ${said}`;
}
