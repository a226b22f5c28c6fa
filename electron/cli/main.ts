import { Command } from 'commander';
import { addAnnotations } from './commands/annotations.ts';
import { addApply } from './commands/apply.ts';
import { addBackup, addRestore } from './commands/backup.ts';
import { addCard } from './commands/card.ts';
import { addCauses } from './commands/causes.ts';
import { addCheck } from './commands/check.ts';
import { addChoices } from './commands/choices.ts';
import { addDemo } from './commands/demo.ts';
import { addExtract } from './commands/extract.ts';
import { addGrow } from './commands/grow.ts';
import { addImport } from './commands/import.ts';
import { addIssue, addVerify } from './commands/issue.ts';
import { addList } from './commands/list.ts';
import { addMeasure } from './commands/measure.ts';
import { addRegister } from './commands/register.ts';
import { addReport } from './commands/report.ts';
import { addSheet } from './commands/sheet.ts';
import { addSheets } from './commands/sheets.ts';
import { addStanding } from './commands/standing.ts';
import { addTrace } from './commands/trace.ts';
import { exitCodes } from './exit-codes.ts';

// `npm run` moves to the project's folder; the words of the command were written in another one.
if (process.env.npm_lifecycle_event === 'wm' && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);

const program = new Command('wm')
  .description('Witness Mark without its window: the same recorder, driven by commands.')
  .addHelpText(
    'after',
    `\nEnds with ${exitCodes.done} when done, ${exitCodes.refused} when refused (the reason is printed), ${exitCodes.usage} for words it does not know,\n${exitCodes.partly} when done in part (some files refused, or a check found something), ${exitCodes.held} when another program holds the folder.`,
  )
  .exitOverride();

for (const add of [
  addDemo,
  addList,
  addImport,
  addReport,
  addIssue,
  addVerify,
  addStanding,
  addChoices,
  addApply,
  addCauses,
  addCheck,
  addBackup,
  addRestore,
  addExtract,
  addTrace,
  addGrow,
  addMeasure,
  addCard,
  addRegister,
  addAnnotations,
  addSheets,
  addSheet,
])
  add(program);

// Help and version also end by this way; only a usage error keeps a code other than 0.
program.parseAsync().catch((error: { code?: string; exitCode?: number }) => {
  if (typeof error.code !== 'string' || !error.code.startsWith('commander.')) throw error;
  process.exitCode = error.exitCode === 0 ? exitCodes.done : exitCodes.usage;
});
