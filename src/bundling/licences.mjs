// The notices that packages ask for where their code is handed on in a bundle.
import { readdirSync, readFileSync } from 'node:fs';

/** Packages whose code stands in a bundle, by the metafile that esbuild wrote of it. */
export const packagesIn = metafile =>
  [
    ...new Set(
      Object.values(metafile.outputs)
        .flatMap(output => Object.entries(output.inputs))
        .filter(([, input]) => input.bytesInOutput > 0)
        .flatMap(([path]) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path)?.[0] ?? []),
    ),
  ].sort();

/** Name, version and notices of each package; the licence it names where it brings no file. */
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
