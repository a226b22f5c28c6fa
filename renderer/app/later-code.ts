import { type ComponentType, lazy } from 'react';

/** A component that is fetched when it is needed, or before. */
export interface LaterCode<Props extends object> {
  readonly Lazy: ComponentType<Props>;
  /** Null until it is here. */
  readonly fetched: () => ComponentType<Props> | null;
  readonly fetch: () => Promise<unknown>;
}

export function laterCode<Props extends object>(load: () => Promise<ComponentType<Props>>): LaterCode<Props> {
  let fetched: ComponentType<Props> | null = null;
  const fetch = async () => {
    fetched = await load();
    return { default: fetched };
  };
  return { Lazy: lazy(fetch) as unknown as ComponentType<Props>, fetched: () => fetched, fetch };
}
