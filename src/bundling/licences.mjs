// The licence notices of the packages whose code is in a bundle.
import { readdirSync, readFileSync } from 'node:fs';

/** Folders of the packages whose code is in a bundle, by esbuild's metafile of it; sorted. */
export const packagesIn = metafile =>
  [
    ...new Set(
      Object.values(metafile.outputs)
        .flatMap(output => Object.entries(output.inputs))
        .filter(([, input]) => input.bytesInOutput > 0)
        .flatMap(([path]) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0] ?? []),
    ),
  ].sort();

/** Name, version, licence and notice files of each package, as one text. */
export function licencesOf(folders) {
  return folders
    .map(folder => {
      const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
      const files = readdirSync(folder).filter(file => /^(licen[cs]e|copying|notice)/i.test(file));
      const notices = files.map(file => readFileSync(`${folder}/${file}`, 'utf8').trim());
      return [`${name} ${version}: ${license}`, ...notices].join('\n\n');
    })
    .join(`\n\n${'-'.repeat(72)}\n\n`);
}
