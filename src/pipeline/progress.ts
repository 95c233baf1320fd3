/** Called as the work goes on: `done` of `all` tunes. `wait`: another build is writing the same site. */
export type Progress = (step: 'study' | 'tunes' | 'wait', done: number, all: number) => void;
