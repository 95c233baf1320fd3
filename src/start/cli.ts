import { loadBundle } from './load-bundle.ts';

/** Ends the process when all is written that was said, with what it holds: to clear that away takes longer. */
const end = (): void => {
  process.stderr.write('', () => process.stdout.write('', () => process.exit()));
};

void loadBundle().program.runCommand().then(end);
