import type { Handlers } from '../context.ts';
import { applyScenario } from './apply.ts';
import { readScenario } from './read-scenario.ts';

export const scenarioHandlers: Handlers = {
  'scenario.apply': {
    outside: async (context, { token }) => {
      const { scenario, folder } = await readScenario(context.tokens.spend(token, 'read'));
      const applied = await applyScenario(context, scenario, folder);
      // A shop with a machine in it has been begun, whichever way the machine came.
      context.mutate((writer) => writer.update('shop', '1', { started: 1 }));
      return applied;
    },
  },
};
