import type { Component } from '../../component.ts';

const fillet: Component = { code: 'FIL', name: 'fillet' };

export const crank: Component = {
  code: 'CRK',
  name: 'crankshaft',
  classes: ['engine-internal'],
  clock: 'up',
  silent: true,
  parts: [
    { code: 'MJ', name: 'main journal', counting: { by: 'main' }, parts: [fillet] },
    {
      code: 'CP',
      name: 'crankpin',
      counting: { by: 'crankpin' },
      parts: [fillet],
      also: ['rod journal', 'big end journal'],
    },
    { code: 'FIL', name: 'crankshaft fillet' },
    { code: 'NOSE', name: 'crankshaft nose', also: ['front snout'] },
    { code: 'FLANGE', name: 'crankshaft flange', also: ['flywheel flange'] },
    { code: 'SEALF', name: 'front crankshaft seal' },
    { code: 'SEALR', name: 'rear crankshaft seal', also: ['rear main seal'] },
    { code: 'MBRG', name: 'main bearing', counting: { by: 'main', shells: true }, also: ['main shells'] },
    { code: 'THRW', name: 'thrust washer', also: ['end float'] },
    { code: 'DAMP', name: 'crankshaft damper', also: ['vibration damper', 'balancer pulley'] },
  ],
};
