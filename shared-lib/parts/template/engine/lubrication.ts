import type { Component } from '../../component.ts';

export const lubrication: Component = {
  code: 'LUB',
  name: 'engine lubrication',
  plural: 'engine lubrication',
  silent: true,
  also: ['oil system', 'oil pressure'],
  parts: [
    { code: 'PUMP', name: 'oil pump' },
    { code: 'RELIEF', name: 'oil relief valve' },
    { code: 'FILT', name: 'oil filter' },
    { code: 'COOLER', name: 'engine oil cooler' },
    { code: 'SUMP', name: 'oil sump', also: ['oil pan'] },
    { code: 'PICKUP', name: 'oil pick-up', also: ['oil strainer'] },
    { code: 'OIL-E', name: 'engine oil', plural: 'engine oil', classes: ['fluid'] },
  ],
};
