import { loadBundle } from './load-bundle.ts';

await loadBundle().program.serveRequests();
