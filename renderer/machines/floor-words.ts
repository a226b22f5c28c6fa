import type { FloorMachine } from '../../shared-lib/contract/machines.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { tierWords } from '../../shared-lib/judgement/tiers.ts';
import { speakComponent } from '../../shared-lib/parts/speak-component.ts';
import { countWords, dateWords, dayWords, hoursWords, numberWords } from '../ui/words.ts';

/** `Backhoe loader BL-6050-M`. */
export function machineName({ kind, serial }: { readonly kind: string; readonly serial: string }): string {
  return `${kindWords(kind)} ${serial}`.trim();
}

/** A machine's kind as it stands on a plate. */
export function kindWords(kind: string): string {
  return kind.charAt(0).toUpperCase() + kind.slice(1);
}

/** Hours as a plate shows them: an estimate says so, and nobody's reading stays blank. */
export function plateHours(hours: number | null, isEstimate = false): string {
  if (hours === null) return '';
  return isEstimate ? `about ${numberWords(hours)}` : numberWords(hours);
}

/** What stands first to be known of a machine: the worst that was found, or that nothing was looked at. */
export function floorHeadline(machine: FloorMachine): string {
  if (machine.visitId === null) return 'No visit opened yet';
  if (machine.doNotOperate) return tierWords(0).heading;
  const worst = Math.min(...machine.tags.map(({ tier }) => tier));
  if (worst === 1 || worst === 2 || worst === 3) return tierWords(worst).heading;
  if (machine.tags.length > 0) return 'Notes only';
  return machine.shots > 0 ? `${countWords(machine.shots, 'photo')}, no finding yet` : 'Nothing looked at yet';
}

/** Whose it is, and since when it stands here. */
export function floorOwner(machine: FloorMachine): string {
  const since = machine.visitDate === null ? '' : `in since ${dayWords(machine.visitDate)}`;
  return [machine.ownerName ?? '', since].filter((part) => part !== '').join(', ');
}

/** What is unfinished on it; empty when nothing is. */
export function unfinishedWords({ unfinishedFindings }: FloorMachine): string {
  return unfinishedFindings === 0 ? '' : `${countWords(unfinishedFindings, 'finding')} unfinished.`;
}

/** What a machine that has gone out is still owed. */
export function owedDetail(machine: FloorMachine): string {
  const open = countWords(machine.tags.length, 'finding');
  const sentences = [
    machine.ownerName === null ? '' : `${machine.ownerName}.`,
    `${open} open${machine.visitDate === null ? '' : ` since ${dateWords(machine.visitDate)}`}.`,
    machine.complaint === '' ? '' : `\u201C${machine.complaint}\u201D`,
  ];
  return sentences.filter((sentence) => sentence !== '').join(' ');
}

/** `Crawler dozer, 9 240 h`. */
export function nameWithHours(machine: FloorMachine): string {
  const name = kindWords(machine.machine.kind);
  return machine.hours === null ? name : `${name}, ${hoursWords(machine.hours)}`;
}

/** Where the mechanic left off: the part in hand and the newest photo. */
export function leftAtWords(record: VisitRecord): string {
  const newest = record.shots.filter(({ binned }) => !binned).at(-1);
  const part = spokenPart(record.visit.currentPart ?? newest?.component ?? null, record);
  const photo = newest === undefined ? '' : `photo ${newest.sequence}`;
  const where = [part === '' ? '' : `the ${part}`, photo].filter((words) => words !== '').join(', ');
  return where === '' ? 'Nothing written on its page yet' : `You left it at ${where}`;
}

function spokenPart(path: string | null, record: VisitRecord): string {
  if (path === null) return '';
  const spoken = speakComponent(path, record.layout.layout);
  return spoken.charAt(0).toLowerCase() + spoken.slice(1);
}

/** The first thing that is still missing, or how it stands. */
export function nextStepWords(record: VisitRecord): string {
  const { lines, notLookedAt } = record.standing;
  const unfinished = lines.find(({ missing }) => missing.length > 0);
  if (unfinished !== undefined) return `Finding ${unfinished.number} still lacks: ${unfinished.missing.join(', ')}.`;
  if (lines.length > 0) return `${rankedWords(lines.length, notLookedAt.length)}.`;
  return record.visit.complaint === '' ? '' : `\u201C${record.visit.complaint}\u201D`;
}

/** `5 findings ranked, 1 place not looked at`. */
function rankedWords(ranked: number, unseen: number): string {
  const words = `${countWords(ranked, 'finding')} ranked`;
  return unseen === 0 ? words : `${words}, ${countWords(unseen, 'place')} not looked at`;
}
