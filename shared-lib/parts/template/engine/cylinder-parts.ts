import type { Component } from '../../component.ts';

export const liner: Component = {
  code: 'LNR',
  name: 'liner',
  counting: { by: 'cylinder' },
  needs: ['liner'],
  classes: ['engine-internal'],
  datum: 'flange',
  also: ['sleeve'],
  parts: [
    { code: 'FLG', name: 'flange', also: ['protrusion'] },
    { code: 'IN', name: 'bore surface', also: ['bore', 'running surface'] },
    { code: 'OUT', name: 'outer surface', also: ['coolant side'] },
    {
      code: 'SEAL',
      name: 'seal ring',
      counting: { by: 'number', most: 6 },
      needs: ['wet-liner'],
      also: ['liner seal', 'packing'],
    },
  ],
};

export const piston: Component = {
  code: 'PST',
  name: 'piston',
  counting: { by: 'cylinder' },
  classes: ['engine-internal'],
  datum: 'crown',
  parts: [
    { code: 'CRN', name: 'crown' },
    { code: 'BOWL', name: 'bowl', also: ['combustion bowl'] },
    { code: 'TLAND', name: 'top land' },
    { code: 'RG', name: 'ring groove', counting: { by: 'number', most: 8 } },
    { code: 'SKT', name: 'skirt' },
    { code: 'PINB', name: 'pin boss', plural: 'pin bosses' },
  ],
};

export const rod: Component = {
  code: 'ROD',
  name: 'connecting rod',
  counting: { by: 'cylinder' },
  classes: ['engine-internal'],
  clock: 'up',
  also: ['conrod', 'con rod'],
  parts: [
    { code: 'SMALL', name: 'small-end bush', plural: 'small-end bushes', also: ['little end'] },
    { code: 'BEAM', name: 'beam', also: ['shank'] },
    { code: 'BIG', name: 'big-end eye', also: ['big end'] },
    { code: 'CAP', name: 'rod cap', also: ['bearing cap'] },
    { code: 'RBOLT', name: 'rod bolt', counting: { by: 'number', most: 2 } },
    { code: 'RBRG', name: 'big-end shell', counting: { by: 'shell' }, also: ['rod bearing', 'big end bearing'] },
  ],
};
