import type { Component } from '../../component.ts';

export const valveTrain: Component = {
  code: 'VT',
  name: 'valve train',
  silent: true,
  parts: [
    { code: 'CAMS', name: 'camshaft' },
    { code: 'LOBE', name: 'cam lobe', counting: { by: 'number' } },
    { code: 'TAP', name: 'tappet', counting: { by: 'number' }, also: ['lifter', 'cam follower'] },
    { code: 'PR', name: 'pushrod', counting: { by: 'number' } },
    { code: 'TIMG', name: 'timing gear', also: ['timing chain', 'timing drive'] },
  ],
};
