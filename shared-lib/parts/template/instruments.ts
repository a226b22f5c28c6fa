import type { Component } from '../component.ts';

const gaugeParts: readonly Component[] = [
  { code: 'SENDER', name: 'sender', also: ['sensor'] },
  { code: 'WIRE', name: 'wire' },
  { code: 'FACE', name: 'face', also: ['dial'] },
];

const gauge = (code: string, name: string, more: Partial<Component> = {}): Component => ({
  code,
  name,
  ...more,
  parts: gaugeParts,
});

export const instruments: Component = {
  code: 'INST',
  name: 'instruments',
  plural: 'instruments',
  classes: ['gauge'],
  silent: true,
  parts: [
    gauge('HRM', 'hour meter', { also: ['hours'] }),
    gauge('TEMP', 'temperature gauge'),
    gauge('OILP', 'oil-pressure gauge'),
    gauge('AMP', 'ammeter', { also: ['charge gauge'] }),
    gauge('VOLT', 'voltmeter'),
    gauge('FUELG', 'fuel gauge'),
    gauge('TACH', 'tachometer', { also: ['rev counter'] }),
    gauge('PRES', 'pressure gauge', { single: true, counting: { by: 'function' } }),
    gauge('LEVEL', 'level bubble', {
      classes: ['stability-indicator'],
      mobile: true,
      also: ['inclinometer', 'level indicator'],
    }),
    gauge('LAMPW', 'warning lamp', { counting: { by: 'number' }, also: ['warning light'] }),
    gauge('BUZ', 'warning buzzer', { also: ['alarm'] }),
  ],
};
