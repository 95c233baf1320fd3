/** Says where a folder cannot be written, or a file to copy is gone: the book's trouble, not ours. */
export class SiteError extends Error {
  constructor(
    readonly rule: 'site-unwritable' | 'source-gone',
    readonly path: string,
    reason: string,
  ) {
    super(reason);
  }
}

/** Does what may meet trouble with a folder, and throws that as such. */
export async function withSiteErrors<T>(folder: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw asSiteError(error, folder);
  }
}

/** What the system refuses is trouble with the folder; all else is a defect of ours. */
export function asSiteError(error: unknown, folder: string): unknown {
  const code = (error as NodeJS.ErrnoException).code;
  const refused =
    /^(?:EACCES|EPERM|EROFS|ENOSPC|EDQUOT|EIO|ENOTDIR|EISDIR|EEXIST|ENOTEMPTY|EMFILE)$/;
  if (error instanceof SiteError || code === undefined || !refused.test(code)) return error;
  return new SiteError('site-unwritable', folder, code);
}
