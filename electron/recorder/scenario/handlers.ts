import type { Handlers } from '../context.ts';

export const scenarioHandlers: Handlers = {
  'scenario.apply': {
    outside: async (context, { token }) => {
      const path = context.tokens.spend(token, 'read');
      const [{ applyScenario }, { readScenario }] = await Promise.all([
        import('./apply.ts'),
        import('./read-scenario.ts'),
      ]);
      const { scenario, folder } = await readScenario(path);
      const applied = await applyScenario(context, scenario, folder);
      // A shop with a machine in it has been begun, whichever way the machine came.
      context.mutate((writer) => writer.update('shop', '1', { started: 1 }));
      return applied;
    },
  },
};
