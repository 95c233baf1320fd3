/** A site that cannot be written, or a file to copy that is gone: a problem of the book, no defect. */
export class SiteError extends Error {
  constructor(
    readonly rule: 'site-unwritable' | 'source-gone',
    readonly path: string,
    reason: string,
  ) {
    super(reason);
  }
}

/** Runs work on a site's folder; system errors become `SiteError`. */
export async function withSiteErrors<T>(folder: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw asSiteError(error, folder);
  }
}

/** A `SiteError` for what the system refuses (permissions, full disk …); any other error as it is. */
export function asSiteError(error: unknown, folder: string): unknown {
  const code = (error as NodeJS.ErrnoException).code;
  const refused =
    /^(?:EACCES|EPERM|EROFS|ENOSPC|EDQUOT|EIO|ENOTDIR|EISDIR|EEXIST|ENOTEMPTY|EMFILE)$/;
  if (error instanceof SiteError || code === undefined || !refused.test(code)) return error;
  return new SiteError('site-unwritable', folder, code);
}
