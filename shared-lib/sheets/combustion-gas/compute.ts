import { sheet } from '../sheet-kind.ts';
import { falsePositives, passDoesNotRuleOut } from './limits.ts';
import { combustionGasSheet } from './sheet.ts';

export const combustionGas = sheet(combustionGasSheet, (given) => {
  const colour = given.word('colour');
  const reason =
    given.word('fluidFresh') === 'no'
      ? 'the fluid did not turn on breath: it is spent'
      : given.word('levelLowered') === 'no'
        ? 'coolant stood in the sampler'
        : null;
  const changed = colour !== null && colour !== 'no change';
  return {
    lines: colour === null ? [] : [{ of: 'combustion gas', seen: changed }],
    says: changed
      ? [
          'Combustion gas is in the coolant; where it gets in is not shown: gasket, head, liner or pre-chamber.',
          `It can mislead: ${falsePositives}.`,
        ]
      : [
          `Nothing found does not rule out: ${passDoesNotRuleOut.join('; ')}.`,
          ...(given.word('loss') === 'yes'
            ? [
                'With coolant lost for no known reason one such test never closes the suspicion: repeat it hot and loaded, and test for pressure and leakage.',
              ]
            : []),
        ],
    ...(reason === null ? {} : { void: reason }),
  };
});
