import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { CautionList } from '../../../../renderer/cautions/CautionList.tsx';
import { CautionPanel } from '../../../../renderer/cautions/CautionPanel.tsx';
import { cautions } from '../../../../shared-lib/cautions/index.ts';

it.each(cautions)(
  '$id shows its word, its symbol unless it is a notice, and its text, and never its code',
  (caution) => {
    const markup = renderToStaticMarkup(<CautionPanel caution={caution} because="finding 2" />);
    const text = markup.replace(/<[^>]*>/g, ' ');
    expect(text).toContain(caution.word);
    expect(text.replaceAll('&#x27;', "'")).toContain(caution.text);
    expect(text).toContain('finding 2');
    expect(markup.includes('<svg')).toBe(caution.word !== 'NOTICE');
    expect(markup).not.toContain('CAU-');
  },
);

it('draws nothing where nothing is called', () => {
  expect(renderToStaticMarkup(<CautionList cautions={[]} />)).toBe('');
});
