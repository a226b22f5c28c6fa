import { type ComputedLine, sheet } from '../sheet-kind.ts';
import { gassingAt12V, handbookSlopeAt12V, publishedBand, regulated } from './limits.ts';
import { chargingSheet } from './sheet.ts';

export const charging = sheet(
  chargingSheet,
  (given) => {
    const [volts, system, temperatureC] = [given.number('volts'), given.number('system'), given.number('temperature')];
    const [output, rated, loads] = [given.number('output'), given.number('rated'), given.number('loads')];
    const dynamo = given.word('machine') === 'dynamo';
    const lines: ComputedLine<keyof typeof chargingSheet.results>[] = [];
    const says: string[] = [];
    if (volts !== null) {
      lines.push({ of: 'volts', value: volts, limit: system === null || dynamo ? null : regulated(system) });
      if (dynamo) says.push('A dynamo is judged by its maker’s figures only.');
      if (system !== null && volts / system > gassingAt12V / 12) {
        says.push('Over 15 V of 12 a battery gasses: this is a danger, not only a cost.');
      }
    }
    if (temperatureC !== null && system !== null) {
      const { low, high } = publishedBand(temperatureC, system);
      const shift = (handbookSlopeAt12V * (temperatureC - 25) * system) / 12;
      lines.push({
        of: 'at that temperature',
        value: (low + high) / 2,
        crossCheck: {
          value: (14.25 * system) / 12 + shift,
          formula: 'middle of 13.8 to 14.7 V at 25 °C, less 20 mV for each kelvin',
        },
        uncertainty: { value: (high - low) / 2, from: 'half the band of the table' },
      });
    }
    if (output !== null && rated !== null) lines.push({ of: 'output', value: (output / rated) * 100 });
    if (output !== null && loads !== null) lines.push({ of: 'left for the battery', value: output - loads });
    const ripple = given.number('ripple');
    if (ripple !== null) lines.push({ of: 'ripple', value: ripple });
    const [terminal, atBattery] = [given.number('terminal'), given.number('atBattery')];
    if (terminal !== null && atBattery !== null) lines.push({ of: 'charging cable drop', value: terminal - atBattery });
    const groundDrop = given.number('groundDrop');
    if (groundDrop !== null) lines.push({ of: 'ground drop', value: groundDrop });
    const [engineSpeed, crank, alternator] = [
      given.number('engineSpeed'),
      given.number('crankPulley'),
      given.number('alternatorPulley'),
    ];
    if (engineSpeed !== null && crank !== null && alternator !== null) {
      lines.push({ of: 'alternator speed', value: (engineSpeed * crank) / alternator });
    }
    const reason =
      given.word('belt') === 'yes'
        ? 'the belt slipped'
        : given.word('battery') === 'discharged'
          ? 'a discharged battery pulls the voltage down; charge it and read again'
          : null;
    return { lines, says, ...(reason === null ? {} : { void: reason }) };
  },
  (given) => {
    const system = given.number('system');
    if (system === null) return [];
    return (['volts', 'terminal', 'atBattery'] as const).flatMap((id) => {
      const volts = given.number(id);
      return volts !== null && volts > 1.6 * system
        ? [{ input: id, weight: 'impossible' as const, what: `${volts} V cannot stand in a ${system} V system.` }]
        : [];
    });
  },
);
