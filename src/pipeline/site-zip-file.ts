import { createHash } from 'node:crypto';
import { siteZipPath } from '../../shared/site-zip-path.ts';
import type { OpenSite } from '../output/open-site.ts';
import type { SiteFile } from '../output/site-file.ts';
import type { Book } from '../read/book.ts';
import { slug } from '../read/slug.ts';

/**
 * The zip of the whole site: every file that the site contains when this is called, but itself. Do not
 * call it for a private build, whose files must not be handed on.
 */
export function siteZipFile(
  book: Book,
  { written, read }: Pick<OpenSite, 'written' | 'read'>,
): SiteFile {
  const paths = [...written.keys()].filter(path => path !== siteZipPath).toSorted();
  const folder = slug(book.settings.title) || 'tune-book';
  const inputs = createHash('sha256').update(folder);
  for (const path of paths) inputs.update(`\n${path} ${written.get(path)?.hash}`);
  return {
    path: siteZipPath,
    inputHash: inputs.digest('hex'),
    async make() {
      const { siteZip } = await import('../export/site-zip.ts');
      return siteZip(
        folder,
        paths.map(path => ({ path, read: () => read(path) })),
      );
    },
  };
}
