import { loadBundle } from './load-bundle.ts';

void loadBundle().program.serveBatches();
