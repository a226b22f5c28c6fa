import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { LocationDiagram } from '../../../../renderer/diagrams/LocationDiagram.tsx';
import { type Diagram, diagramsFor } from '../../../../shared-lib/diagrams/diagram-for.ts';
import { plainLayout } from '../../../support/ranking/a-finding.ts';

function diagramOf(location: string): Diagram {
  const [diagram] = diagramsFor(
    [{ findingId: 'f', tag: { number: 3, tier: 2, state: 'confirmed' }, locations: [location] }],
    plainLayout,
  );
  if (diagram === undefined) throw new Error(`${location} is not drawn`);
  return diagram;
}

const nothing = () => undefined;
const faceCrack = diagramOf('ENG/HD.1/FIRE@near=EVS.3.1;clk=5');

describe('a location diagram', () => {
  it('is named, says that the view is mirrored, and shows the tag of its finding', () => {
    const markup = renderToStaticMarkup(<LocationDiagram diagram={faceCrack} />);
    expect(markup).toContain('aria-label="Cylinder head, fire face"');
    const text = markup.replace(/<[^>]*>/g, ' ').replaceAll('&#x27;', "'");
    expect(text).toContain('Seen from below: left and right swap.');
    expect(text).toContain("7 o'clock here is 5 on the deck.");
    expect(text).toMatch(/\b3\b/);
  });

  it('only shows where nothing can be picked', () => {
    expect(renderToStaticMarkup(<LocationDiagram diagram={faceCrack} />)).not.toContain('<button');
  });

  it.each([
    'ENG/HD.1/EVS.3.1',
    'ENG/BLK/DECK.1',
    'ENG/PST.2/SKT',
    'ENG/CRK/MJ.2',
    'HYD/CYL.boom.L/GL',
    'HYD/HOSE.boom.L',
    'FRM/LOADERTWR.R',
    'ELEC/GND.1',
  ])('%s: every part is a button with its name, and one of them a stop for the tab key', (location) => {
    const diagram = diagramOf(location);
    const markup = renderToStaticMarkup(<LocationDiagram diagram={diagram} onPick={nothing} />);
    const buttons = markup.match(/<button[^>]*>/g) ?? [];
    expect(buttons.length).toBe(diagram.parts.length);
    expect(buttons.length).toBeGreaterThan(0);
    for (const button of buttons) expect(button).toMatch(/aria-label="[^"]{3,}"/);
    expect(buttons.filter((button) => button.includes('tabindex="0"'))).toHaveLength(1);
  });

  it('shows no code', () => {
    const markup = renderToStaticMarkup(<LocationDiagram diagram={faceCrack} onPick={nothing} />);
    expect(markup).not.toMatch(/EVS|INJB|ENG\//);
  });

  it('draws the same line once: keys are their own', () => {
    const keys = faceCrack.primitives.map((primitive) => JSON.stringify(primitive));
    expect(new Set(keys).size).toBe(keys.length);
  });
});
