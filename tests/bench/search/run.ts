import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { connect } from '../../../electron/recorder/database/connection.ts';
import { migrate, readMigrations } from '../../../electron/recorder/database/migrate.ts';
import { find } from '../../../electron/recorder/search/find.ts';
import { putDocument } from '../../../electron/recorder/search/queries.ts';
import { type Figure, printFigure, quantile } from '../ratio.ts';

const machines = 10_000;
const findingsEach = 10;
const runs = 9;
const rounds = 200;
const warmUps = 30;

/** A small generator of its own, so that every run asks the same of the same record. */
const random = (seed: number) => () => {
  seed = (seed * 1_664_525 + 1_013_904_223) % 4_294_967_296;
  return seed / 4_294_967_296;
};

const parts = [
  'exhaust seat',
  'boom hose',
  'liner',
  'piston',
  'drag link',
  'radiator core',
  'ground strap',
  'injector',
];
const defects = ['crack', 'scuffed', 'worn', 'leaks', 'blocked', 'corroded', 'loose', 'pitted'];

const fill = (db: ReturnType<typeof connect>): void => {
  const next = random(11);
  const pick = (words: readonly string[]): string => words[Math.floor(next() * words.length)] ?? '';
  db.transaction(() => {
    for (let machine = 0; machine < machines; machine += 1) {
      const id = `m${machine}`;
      const serial = `XB-${(machine * 7919).toString(36).toUpperCase()}-${machine}`;
      putDocument(db, {
        record: id,
        kind: 'machine',
        machine_id: id,
        visit_id: null,
        finding_id: null,
        words: `loader tractor ${serial} owner${machine % 977}`,
        serial,
      });
      for (let finding = 0; finding < findingsEach; finding += 1) {
        putDocument(db, {
          record: `${id}f${finding}`,
          kind: 'finding',
          machine_id: id,
          visit_id: `${id}v`,
          finding_id: `${id}f${finding}`,
          // Every other one says 'machine': a word in half the rows. One in 10,000 is rare.
          words: `${pick(parts)} cylinder ${1 + Math.floor(next() * 6)} ${pick(defects)} ${Math.floor(next() * 90)} mm${finding % 2 === 0 ? ' machine' : ''}${machine % 1000 === 5 && finding === 3 ? ' porosity' : ''}`,
          serial: '',
        });
      }
    }
  });
};

/** Each question beside the bare query that the same tables answer. */
const questions: readonly { what: string; typed: string; bare: string; with: string }[] = [
  { what: 'a rare word', typed: 'porosity', bare: 'words', with: '"porosity"*' },
  { what: 'two words', typed: 'liner pitted', bare: 'words', with: '"liner" "pitted"*' },
  { what: 'a beginning as typed', typed: 'radi', bare: 'words', with: '"radi"*' },
  { what: 'a fragment of a serial', typed: '-4242', bare: 'serials', with: '"-4242"' },
  { what: 'a word in half the rows', typed: 'machine', bare: 'words', with: '"machine"*' },
];

export const searchFigures = (): Figure[] => {
  const folder = mkdtempSync(join(tmpdir(), 'bench-search-'));
  const sqlite = new Database(join(folder, 'record.sqlite'));
  try {
    migrate(sqlite, readMigrations(), () => {});
    const db = connect(sqlite);
    fill(db);
    const bare = {
      // 'The first fifty' is what both give; ranking a word of half the rows is what nobody waits for.
      words: sqlite.prepare('SELECT rowid FROM search_words WHERE search_words MATCH ? ORDER BY rowid DESC LIMIT 50'),
      serials: sqlite.prepare('SELECT rowid FROM search_serials WHERE serial MATCH ? LIMIT 50'),
    };
    const ranked = sqlite.prepare('SELECT rowid FROM search_words WHERE search_words MATCH ? ORDER BY rank LIMIT 50');
    return questions.map((question) => {
      const statement = question.bare === 'serials' ? bare.serials : question.typed === 'machine' ? bare.words : ranked;
      // The first rounds compile and fill caches, on both sides.
      askInTurns(warmUps);
      const p95s = Array.from({ length: runs }, () => askInTurns(rounds));
      return {
        what: `search, ${question.what} (p95 over ${machines * (findingsEach + 1)} rows)`,
        oursMs: p95s.map(({ oursMs }) => quantile(oursMs, 0.95)),
        floorMs: p95s.map(({ floorMs }) => quantile(floorMs, 0.95)),
        floor: 'the bare query',
        target: 3,
      };

      function askInTurns(times: number): { oursMs: number[]; floorMs: number[] } {
        const oursMs: number[] = [];
        const floorMs: number[] = [];
        for (let round = 0; round < times; round += 1) {
          const began = performance.now();
          find(db, question.typed);
          const between = performance.now();
          statement.all(question.with);
          oursMs.push(between - began);
          floorMs.push(performance.now() - between);
        }
        return { oursMs, floorMs };
      }
    });
  } finally {
    sqlite.close();
    rmSync(folder, { recursive: true, force: true });
  }
};

if (import.meta.main) for (const figure of searchFigures()) printFigure(figure);
