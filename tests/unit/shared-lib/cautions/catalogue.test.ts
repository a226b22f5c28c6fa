import { describe, expect, it } from 'vitest';
import type { Caution, CautionClause, PlaceRule } from '../../../../shared-lib/cautions/caution.ts';
import { cautions } from '../../../../shared-lib/cautions/index.ts';
import { hasAlertSymbol, signalWords } from '../../../../shared-lib/cautions/signal-word.ts';
import { workSteps } from '../../../../shared-lib/cautions/work-step.ts';
import { findComponent } from '../../../../shared-lib/parts/find-component.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';
import { sheetName } from '../../../../shared-lib/wording/report.ts';

/** The signal word of each caution, as the handbook's catalogue (chapter 9) prints them. */
const words: Readonly<Record<Caution['word'], readonly number[]>> = {
  DANGER: [1, 4, 9, 11, 15, 19, 20, 21, 22, 33],
  WARNING: [2, 3, 5, 6, 7, 8, 10, 12, 13, 14, 16, 17, 18, 23, 24, 25, 26, 28, 29, 30, 32, 34],
  CAUTION: [27, 36, 37, 38],
  NOTICE: [31, 35],
};

function placeRulesOf(clause: CautionClause): PlaceRule[] {
  if (clause.by === 'machine') return clause.has === undefined ? [] : [clause.has];
  const rules = clause.by === 'step' ? [clause.at, clause.machineHas] : [clause.at];
  return rules.filter((rule) => rule !== undefined);
}

it('has the thirty-eight of the catalogue, each with its signal word', () => {
  const byWord = Object.fromEntries(
    Object.keys(words).map((word) => [
      word,
      cautions
        .filter((caution) => caution.word === word)
        .map(({ id }) => Number(/^CAU-(\d\d)$/.exec(id)?.[1]))
        .sort((a, b) => a - b),
    ]),
  );
  expect(byWord).toEqual(words);
});

it('only a notice, which speaks of no injury, goes without the safety alert symbol (ANSI Z535.4)', () => {
  expect(signalWords.filter(hasAlertSymbol)).toEqual(['DANGER', 'WARNING', 'CAUTION']);
});

describe.each(cautions)('$id', (caution) => {
  it('says in at most thirty words what to do', () => {
    expect(caution.text.split(/\s+/).length).toBeLessThanOrEqual(30);
    expect(caution.text).toMatch(/^[A-Z].*\.$/);
  });

  it('names a document or says that it is common practice', () => {
    expect(caution.sources.length).toBeGreaterThan(0);
    for (const source of caution.sources) {
      expect(source).toMatch(/^common practice$|\d{3,}|NIOSH|the safety sheet of the product/);
    }
  });

  it('shows people no code', () => {
    expect(`${caution.hazard} ${caution.text}`).not.toMatch(/\b(MS-\d|CAU-|[A-Z]{4,}\.|T[0-4]\b|U[0-5]\b|D[1-4]\b)/);
  });

  it('can be called, and only by parts, sheets and steps that exist', () => {
    expect(caution.calledBy.length).toBeGreaterThan(0);
    for (const clause of caution.calledBy) {
      for (const part of placeRulesOf(clause).flatMap((rule) => rule.parts ?? [])) {
        expect(findComponent(parseLocation(part).path), part).not.toBeNull();
      }
      if (clause.by === 'sheet') for (const sheet of clause.sheets) expect(sheetName(sheet)).not.toBe('Reading');
      if (clause.by === 'step') for (const step of clause.steps) expect(workSteps[step]).toBeTruthy();
    }
  });
});
