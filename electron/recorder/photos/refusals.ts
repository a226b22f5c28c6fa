import { AppError } from '../../../shared-lib/contract/errors.ts';

const codeOf = (cause: unknown): string => {
  const code = (cause as { code?: unknown } | null)?.code;
  return typeof code === 'string' ? code : '';
};

/** A file that could not be read, as the mechanic is told. Errors that are not the file system's pass unchanged. */
export const refusedReading = (cause: unknown, name: string): unknown => {
  if (cause instanceof AppError) return cause;
  const code = codeOf(cause);
  if (code === 'EISDIR') return new AppError('photo-is-folder', { name }, { cause });
  const reasons: Readonly<Record<string, string>> = {
    EACCES: 'not-allowed',
    EPERM: 'not-allowed',
    ENOENT: 'gone',
    ENOTDIR: 'gone',
    ELOOP: 'gone',
    ENAMETOOLONG: 'gone',
  };
  if (!/^E[A-Z0-9]+$/.test(code)) return cause;
  return new AppError('photo-unreadable', { name, reason: reasons[code] ?? 'read-error' }, { cause });
};

/** A write into the store that failed. Errors that are not the file system's pass unchanged. */
export const refusedWriting = (cause: unknown): unknown => {
  if (cause instanceof AppError) return cause;
  const code = codeOf(cause);
  if (code === 'ENOSPC' || code === 'EDQUOT') return new AppError('disk-full', {}, { cause });
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') {
    return new AppError('folder-unwritable', { reason: code }, { cause });
  }
  return cause;
};
