import { defineDefect } from './defect.ts';

export const lowOutput = defineDefect({
  id: 'lowout',
  name: 'Low output',
  meaning: 'gives less than is needed',
  said: ['weak', 'low output', 'low pressure'],
  where: [
    'PUMPH',
    'ALT',
    'STR',
    'BAT',
    'BRK',
    'ENG',
    'FUEL',
    'HYD',
    'WPUMP',
    'LUB',
    'FAN',
    'DRV',
    'TURBO',
    'INJ',
    'INJP',
    'LIFT',
    'CYL',
  ],
  mark: 'point',
  quantities: ['value', 'required', 'output', 'deceleration', 'creep', 'slope', 'time', 'pressure', 'flow', 'voltage'],
  lookFor: ['wear', 'slip', 'supply'],
  ifLeft: ['it does not do its work'],
  confirmedBy: ['M', 'F', 'E'],
  misses: 'Holds for today’s conditions: it says nothing of the margin tomorrow.',
  spoken: (say) =>
    say.has('creep')
      ? ['creeps', say.of('creep'), say.phrase('time', '', 'in')].filter((part) => part !== null).join(' ')
      : say.has('deceleration')
        ? say.with('slows at only', say.of('deceleration'))
        : say.with(
            'low output',
            say.of('value') ?? say.of('output') ?? say.of('pressure') ?? say.of('flow') ?? say.of('voltage'),
          ),
});
