/** Told how far the work is: tunes done of all; `wait`: another build is writing the same site. */
export type Progress = (step: 'study' | 'tunes' | 'wait', done: number, all: number) => void;
