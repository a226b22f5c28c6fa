import { laterCode } from './later-code.ts';

export const keyHelp = laterCode(async () => (await import('./KeyHelp.tsx')).KeyHelp);
export const benchPanel = laterCode(async () => (await import('./BenchPanel.tsx')).BenchPanel);
export const cardPanel = laterCode(async () => (await import('../measuring/CardPanel.tsx')).CardPanel);
