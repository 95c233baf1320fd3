import { loadBundle } from './load-bundle.ts';

/** Ends the process once its output is written. It frees no memory first, which would take longer. */
const end = (): void => {
  process.stderr.write('', () => process.stdout.write('', () => process.exit()));
};

void loadBundle().program.runCommand().then(end);
