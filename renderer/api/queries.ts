import {
  keepPreviousData,
  notifyManager,
  QueryClient,
  type UseQueryResult,
  useMutation,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import type { InputOf, OperationName, OutputOf } from '../../shared-lib/contract/operations.ts';
import { type CallError, call } from './client.ts';
import { whenNothingIsPressed } from './pressed.ts';

/** Answers stay until a `changed` event touches them; the recorder is on this machine, so there is no network to wait for. */
export function createQueryClient(): QueryClient {
  notifyManager.setScheduler(whenNothingIsPressed);
  return new QueryClient({
    defaultOptions: {
      queries: {
        staleTime: Number.POSITIVE_INFINITY,
        gcTime: 5 * 60_000,
        retry: false,
        networkMode: 'always',
        refetchOnWindowFocus: false,
        refetchOnReconnect: false,
      },
      mutations: { retry: false, networkMode: 'always' },
    },
  });
}

/** Asks before anybody looks, so that the answer is there, or on its way, when a place asks the same. */
export function askAhead<N extends OperationName>(client: QueryClient, name: N, input: InputOf<N>): void {
  void client.prefetchQuery({ queryKey: [name, input], queryFn: () => call(name, input) });
}

interface AskOptions {
  /** Asked only once this is true. */
  readonly when?: boolean | undefined;
  /** Shows the answer to the question before until the new one is here: for a search as it is typed. */
  readonly keepPrevious?: boolean | undefined;
}

/** Asks a question of the record and keeps its answer up to date. */
export function useAnswer<N extends OperationName>(
  name: N,
  input: InputOf<N>,
  { when = true, keepPrevious = false }: AskOptions = {},
): UseQueryResult<OutputOf<N>, CallError> {
  return useQuery<OutputOf<N>, CallError>({
    queryKey: [name, input],
    queryFn: () => call(name, input),
    enabled: when,
    ...(keepPrevious ? { placeholderData: keepPreviousData } : {}),
  });
}

/** One kind of change, with its state: `run` never throws, `runOrThrow` does. */
export interface Change<N extends OperationName> {
  readonly run: (input: InputOf<N>, onDone?: (output: OutputOf<N>) => void) => void;
  readonly runOrThrow: (input: InputOf<N>) => Promise<OutputOf<N>>;
  readonly isRunning: boolean;
  /** Null unless the last run was refused. */
  readonly error: CallError | null;
  readonly forgetError: () => void;
}

/** Changes the record. The answers that show it refetch when the recorder says `changed`. */
export function useChange<N extends OperationName>(name: N): Change<N> {
  const { mutate, mutateAsync, isPending, error, reset } = useMutation<OutputOf<N>, CallError, InputOf<N>>({
    mutationFn: (input) => call(name, input),
  });
  return {
    run: (input, onDone) => mutate(input, { onSuccess: (output) => onDone?.(output) }),
    runOrThrow: mutateAsync,
    isRunning: isPending,
    error,
    forgetError: reset,
  };
}

/** Puts an answer that came with a change where the question of that answer will find it. */
export function useKeepAnswer() {
  const client = useQueryClient();
  return <N extends OperationName>(name: N, input: InputOf<N>, answer: OutputOf<N>): void => {
    client.setQueryData([name, input], answer);
  };
}
