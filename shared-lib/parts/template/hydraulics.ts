import type { Component } from '../component.ts';

/** A hydraulic cylinder has the same parts wherever it hangs in the tree. */
export const hydraulicCylinder: Component = {
  code: 'CYL',
  name: 'hydraulic cylinder',
  withFunction: 'cylinder',
  counting: { by: 'function' },
  classes: ['load-holding', 'hydraulic-cylinder'],
  clock: 'up',
  datum: 'base-end',
  also: ['ram'],
  parts: [
    { code: 'BAR', name: 'barrel', also: ['tube'] },
    { code: 'GL', name: 'gland', also: ['head gland', 'packing'] },
    { code: 'RODH', name: 'rod', datum: 'rod-eye' },
    { code: 'RSEAL', name: 'rod seal' },
    { code: 'WIPER', name: 'wiper' },
    { code: 'PIS', name: 'piston and seal', plural: 'pistons and seals', also: ['piston seal'] },
    { code: 'EYE', name: 'eye', counting: { by: 'word', words: { b: 'base', r: 'rod' } } },
    { code: 'PINC', name: 'pin', counting: { by: 'word', words: { b: 'base', r: 'rod' } } },
    { code: 'PORT', name: 'port', counting: { by: 'word', words: { b: 'base', r: 'rod' } } },
  ],
};

const line = (code: string, name: string, more: Partial<Component> = {}): Component => ({
  code,
  name,
  counting: { by: 'function', lines: true },
  classes: ['hydraulic-line'],
  clock: 'up',
  datum: 'pump-end',
  ...more,
});

export const hydraulics: Component = {
  code: 'HYD',
  name: 'hydraulic system',
  classes: ['hydraulic'],
  clock: 'up',
  silent: true,
  also: ['hydraulics'],
  parts: [
    { code: 'TANKH', name: 'hydraulic tank', also: ['reservoir'] },
    { code: 'STRNH', name: 'suction strainer' },
    {
      code: 'PUMPH',
      name: 'hydraulic pump',
      single: true,
      counting: { by: 'number' },
      parts: [
        { code: 'DRIVE', name: 'drive', also: ['coupling'] },
        { code: 'INLET', name: 'inlet' },
        { code: 'SSEAL', name: 'shaft seal' },
      ],
    },
    { code: 'RV', name: 'relief valve', single: true, counting: { by: 'number' } },
    {
      code: 'DCV',
      name: 'control valve',
      single: true,
      counting: { by: 'number', sections: true },
      also: ['spool', 'directional valve', 'valve bank'],
    },
    { code: 'LCHK', name: 'load check', single: true, counting: { by: 'function' } },
    {
      code: 'LOCKV',
      name: 'load-holding lock valve',
      counting: { by: 'function' },
      classes: ['load-holding', 'lock-valve'],
      also: ['pilot check', 'holding valve'],
    },
    {
      code: 'CBV',
      name: 'counterbalance valve',
      counting: { by: 'function' },
      classes: ['load-holding', 'lock-valve'],
      also: ['overcentre valve', 'load control valve'],
    },
    line('HOSE', 'hydraulic hose', {
      withFunction: 'hose',
      parts: [
        { code: 'END', name: 'fitting', counting: { by: 'end' }, also: ['hose end'] },
        { code: 'COVER', name: 'cover' },
        { code: 'REINF', name: 'wire reinforcement', also: ['wire braid'] },
        { code: 'CRIMP', name: 'crimp', counting: { by: 'end' }, also: ['ferrule'] },
      ],
    }),
    line('TUBE', 'hydraulic tube', { withFunction: 'tube', also: ['steel line', 'pipe'] }),
    {
      code: 'COUP',
      name: 'hydraulic coupler',
      counting: { by: 'number' },
      classes: ['hydraulic-line'],
      also: ['quick coupler'],
    },
    { code: 'FILH', name: 'hydraulic filter', single: true, counting: { by: 'number' } },
    { code: 'CLRH', name: 'hydraulic oil cooler' },
    { code: 'ACC', name: 'accumulator', single: true, counting: { by: 'number' }, classes: ['accumulator'] },
    hydraulicCylinder,
    { code: 'OIL-H', name: 'hydraulic oil', plural: 'hydraulic oil', classes: ['fluid'] },
  ],
};
