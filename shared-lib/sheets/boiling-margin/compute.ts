import { airKpa } from '../conditions.ts';
import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { handbookPressureKpa, seaLevelKpa } from '../standards/atmosphere.ts';
import { coolantBoilsC, handbookCoolantBoilsC } from '../standards/coolant-boiling.ts';
import { mostCheckedGlycol } from './limits.ts';
import { boilingMarginSheet } from './sheet.ts';

const kpaPerPsi = 6.894757293168361;

/** Published boiling points of coolant agree with the formula within this. Source: US Army TM 5-3895-382-24 and others. */
const mixtureOffC = 5 / 9;

/** How much the rule of thumb promises more than water keeps, in °C: 3 °F for each psi over the true boiling point. */
export const ruleOfThumbOffC = (capKpa: number): number => {
  const trueRiseC = coolantBoilsC(seaLevelKpa + capKpa, 0) - coolantBoilsC(seaLevelKpa, 0);
  return ((capKpa / kpaPerPsi) * 3) / 1.8 - trueRiseC;
};

export const boilingMargin = sheet(boilingMarginSheet, (given) => {
  const [cap, glycol, highest] = [given.number('cap'), given.number('glycol'), given.number('highest')];
  const lines: ComputedLine<keyof typeof boilingMarginSheet.results>[] = [];
  const says: string[] = [];
  if (cap !== null && glycol !== null) {
    const altitudeM = given.number('altitude');
    const boils = coolantBoilsC(airKpa(altitudeM) + cap, glycol / 100);
    const handbook = handbookCoolantBoilsC(handbookPressureKpa(altitudeM ?? 0) + cap, glycol / 100);
    const formula = 'Clausius-Clapeyron with Raoult, within about 1 °C up to 60 %';
    lines.push({
      of: 'boils',
      value: boils,
      crossCheck: { value: handbook, formula },
      limit: null,
      uncertainty: {
        value: glycol === 0 ? 0.1 : mixtureOffC,
        from: 'published boiling points of coolant against the formula',
      },
    });
    if (highest !== null) {
      const unchecked = uncheckedBecause(glycol, given.word('glycolKind'));
      const infrared = given.word('where') === 'infrared on metal';
      lines.push({
        of: 'margin',
        value: boils - highest,
        crossCheck: { value: handbook - highest, formula },
        ...(infrared ? { uncertainty: { value: 5, from: 'infrared on metal; common practice, no source' } } : {}),
        ...(unchecked === null ? {} : { void: unchecked }),
      });
      says.push(
        'Metal near the exhaust seats is hotter than any gauge: boiling starts there before the margin is gone.',
      );
    }
    if (altitudeM === null) says.push('No altitude was given; sea level is taken.');
  }
  const [enters, leaves, air] = [given.number('radiatorIn'), given.number('radiatorOut'), given.number('air')];
  if (enters !== null && leaves !== null) lines.push({ of: 'drop across the radiator', value: enters - leaves });
  if (enters !== null && air !== null) lines.push({ of: 'coolant above the air', value: enters - air });
  if (cap !== null && cap > 0) {
    lines.push({ of: 'rule of thumb is off by', value: ruleOfThumbOffC(cap) });
  }
  return { lines, says };
});

function uncheckedBecause(glycolPercent: number, kind: string | null): string | null {
  if (kind === 'propylene' && glycolPercent > 0)
    return 'the formula is for ethylene glycol, and this coolant is propylene glycol';
  return glycolPercent > mostCheckedGlycol
    ? `over ${mostCheckedGlycol} % glycol no published table checks the formula`
    : null;
}
