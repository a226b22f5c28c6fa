import { type CompiledQuery, type Expression, type OperationNode, type RawBuilder, sql, ValueNode } from 'kysely';
import { build, type Compilable, type ReadableDb, type WritableDb } from './connection.ts';

/** Stands in a query for a value that comes with each call. A list comes as one value: see `listed`. */
export class Param<T> implements Expression<T> {
  readonly position: number;

  constructor(position: number) {
    this.position = position;
  }

  get expressionType(): T | undefined {
    return undefined;
  }

  toOperationNode(): OperationNode {
    return ValueNode.create(this);
  }
}

type Params = readonly Param<unknown>[];
type Values<P extends Params> = { [I in keyof P]: P[I] extends Param<infer T> ? T : never };

const bindable = (value: unknown): unknown => (Array.isArray(value) ? JSON.stringify(value) : value);

/**
 * A query that is built and compiled at its first call; each call only binds its values.
 *
 * @param make  the same query whenever it is asked, with a `Param` for every value that comes with a call
 */
export const compiledOnce = <Row>(make: () => Compilable<Row>) => {
  let known: CompiledQuery<Row> | undefined;
  return (values: readonly unknown[]): Compilable<Row> => ({
    compile: () => {
      known ??= make().compile(build);
      const parameters = known.parameters.map((each) =>
        each instanceof Param ? bindable(values[each.position]) : each,
      );
      return { ...known, parameters };
    },
  });
};

const withParams = <P extends Params, Row>(make: (...params: P) => Compilable<Row>) =>
  compiledOnce(() => {
    const params = Array.from({ length: make.length }, (_, position) => new Param(position));
    return make(...(params as Params as P));
  });

/** All rows of a query: `export const marksOn = all((shotId: Param<string>) => build.selectFrom('mark')…)`. */
export const all = <P extends Params, Row>(make: (...params: P) => Compilable<Row>) => {
  const query = withParams(make);
  return (db: ReadableDb, ...values: Values<P>): Row[] => db.all(query(values));
};

/** The first row of a query, or undefined. */
export const first = <P extends Params, Row>(make: (...params: P) => Compilable<Row>) => {
  const query = withParams(make);
  return (db: ReadableDb, ...values: Values<P>): Row | undefined => db.first(query(values));
};

/** A statement that writes; gives how many rows it changed. */
export const run = <P extends Params>(make: (...params: P) => Compilable<unknown>) => {
  const query = withParams(make);
  return (db: WritableDb, ...values: Values<P>): number => db.run(query(values));
};

/** The members of a list, for `in`: one statement serves lists of every length, the empty one too. */
export const listed = <T>(list: Param<readonly T[]>): RawBuilder<T> => sql<T>`(SELECT value FROM json_each(${list}))`;
