import type { Handlers } from '../context.ts';
import { applyScenario } from './apply.ts';
import { readScenario } from './read-scenario.ts';

export const scenarioHandlers: Handlers = {
  'scenario.apply': {
    outside: async (context, { token }) => {
      const { scenario, folder } = await readScenario(context.tokens.spend(token, 'read'));
      return applyScenario(context, scenario, folder);
    },
  },
};
