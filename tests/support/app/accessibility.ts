import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/**
 * What axe-core finds serious or critical on the screen as it stands, one line each: rule, place, what to mend.
 *
 * Legacy mode: the other one gathers its result in a second page, and the program opens none.
 */
export async function seriousViolations(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).setLegacyMode(true).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) =>
      nodes.map(({ target, failureSummary }) => `${id} ${target.join(' ')}: ${failureSummary}`),
    );
}
