import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { Button } from '../../../../renderer/ui/Button.tsx';
import { Choice } from '../../../../renderer/ui/Choice.tsx';
import { ErrorNote } from '../../../../renderer/ui/ErrorNote.tsx';
import { LadderRule } from '../../../../renderer/ui/LadderRule.tsx';
import { Plate } from '../../../../renderer/ui/Plate.tsx';
import { Progress } from '../../../../renderer/ui/Progress.tsx';
import { TextField } from '../../../../renderer/ui/TextField.tsx';
import { UnitText } from '../../../../renderer/ui/UnitText.tsx';

const nothing = () => undefined;
const textOf = (markup: string) => markup.replace(/<[^>]*>/g, '');

describe('every block has a name and says its state', () => {
  it('a button speaks its words and not its key', () => {
    const markup = renderToStaticMarkup(<Button keyCap="N">Take in a machine</Button>);
    expect(markup).toMatch(/<button[^>]*type="button"/);
    expect(markup).toMatch(/aria-hidden="true">N</);
  });

  it('a field is named by its label and describes its error', () => {
    const markup = renderToStaticMarkup(
      <TextField label="Serial" value="BL" error={{ happened: 'Taken.', kept: 'It stands here.' }} />,
    );
    const id = /<label[^>]*for="([^"]+)"[^>]*>Serial/.exec(markup)?.[1];
    expect(id).toBeTruthy();
    expect(markup).toContain(`id="${id}"`);
    expect(markup).toContain('aria-invalid="true"');
    const described = /aria-describedby="([^"]+)"/.exec(markup)?.[1];
    expect(markup).toContain(`id="${described}" role="alert"`);
  });

  it('a choice takes nothing for granted', () => {
    const options = [
      { value: 'a', words: 'dry' },
      { value: 'b', words: 'wet' },
    ];
    const markup = renderToStaticMarkup(<Choice label="Liners" options={options} value={null} onChoose={nothing} />);
    expect(markup).toContain('<legend');
    expect(markup).not.toMatch(/<input[^>]*checked/);
    const chosen = renderToStaticMarkup(<Choice label="Liners" options={options} value="b" onChoose={nothing} />);
    expect(chosen.match(/<input[^>]*checked/g)).toHaveLength(1);
    expect(chosen).toMatch(/<input[^>]*checked=""[^>]*value="b"|<input[^>]*value="b"[^>]*checked=""/);
  });

  it('progress says how far it is, and can be stopped', () => {
    const markup = renderToStaticMarkup(
      <Progress label="Taking in" done={10} of={16} words="photo 10 of 16" onStop={nothing} />,
    );
    expect(markup).toContain('role="progressbar"');
    expect(markup).toContain('aria-valuenow="10"');
    expect(markup).toContain('Stop here');
    expect(renderToStaticMarkup(<Progress label="Taking in" done={0} of={null} words="..." />)).not.toContain(
      'aria-valuenow',
    );
  });

  it('an error says what happened and what was kept, aloud', () => {
    const markup = renderToStaticMarkup(<ErrorNote happened="The disk is full." kept="All is kept." />);
    expect(markup).toContain('role="alert"');
    expect(textOf(markup)).toBe('The disk is full.All is kept.');
  });

  it('a tier is never a rule alone', () => {
    expect(textOf(renderToStaticMarkup(<LadderRule rung={0} word="Do not operate" />))).toBe('Do not operate');
  });

  it('a plate lists its fields as label and value', () => {
    const markup = renderToStaticMarkup(<Plate title="Backhoe loader" fields={[{ label: 'serial', value: 'BL-1' }]} />);
    expect(markup).toMatch(/<dt[^>]*>serial<\/dt><dd[^>]*>BL-1<\/dd>/);
  });

  it.each([
    ['31', 'mm', '31\u202fmm'],
    ['23.5', '°', '23.5°'],
  ])('%s %s is written %s', (value, unit, written) => {
    expect(textOf(renderToStaticMarkup(<UnitText value={value} unit={unit} />))).toBe(written);
  });
});
