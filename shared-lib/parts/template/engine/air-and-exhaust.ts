import type { Component } from '../../component.ts';

export const air: Component = {
  code: 'AIR',
  name: 'air intake',
  silent: true,
  parts: [
    { code: 'CLEAN', name: 'air cleaner', also: ['air filter'] },
    { code: 'HOSE', name: 'air intake hose', single: true, counting: { by: 'number' } },
    {
      code: 'TURBO',
      name: 'turbocharger',
      classes: ['turbocharger', 'hot-exhaust'],
      parts: [
        { code: 'COMP', name: 'compressor wheel', also: ['compressor'] },
        { code: 'TURB', name: 'turbine wheel', also: ['turbine'] },
        { code: 'SHAFT', name: 'shaft' },
        { code: 'BRGH', name: 'bearing housing' },
      ],
    },
    { code: 'AFTC', name: 'aftercooler', also: ['intercooler', 'charge air cooler'] },
    { code: 'INTM', name: 'intake manifold', also: ['inlet manifold'] },
  ],
};

export const exhaust: Component = {
  code: 'EXH',
  name: 'exhaust system',
  classes: ['hot-exhaust'],
  silent: true,
  parts: [
    { code: 'EXHM', name: 'exhaust manifold' },
    { code: 'PIPE', name: 'exhaust pipe' },
    { code: 'MUF', name: 'muffler', also: ['silencer', 'spark arrester'] },
  ],
};
