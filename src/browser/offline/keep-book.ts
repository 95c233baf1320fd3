import type { KeepingOrder, KeepingState } from '../../../shared/kept-site.ts';
import { sizeWords } from '../../../shared/words/amounts.ts';
import { offlineWords } from '../../../shared/words/en/offline.ts';

/**
 * Over http the site keeps itself on the device. Where it does, the foot of the page says so, offers
 * to keep the recordings, and tells of a newer version, which is shown when the reader asks.
 */
export function keepBook(place: HTMLElement): void {
  if (!('serviceWorker' in navigator) || !location.protocol.startsWith('http')) return;
  const worker = new URL(`${place.dataset.root ?? ''}keep-site.js`, location.href);
  const { serviceWorker } = navigator;
  let keptBefore = serviceWorker.controller !== null;
  serviceWorker.addEventListener('message', ({ data }) => showState(place, data as KeepingState));
  serviceWorker.addEventListener('controllerchange', () => {
    // Another version has taken over: a page of the old one would ask for files of the new.
    if (keptBefore) location.reload();
    else askState();
    keptBefore = true;
  });
  serviceWorker
    .register(worker, { updateViaCache: 'none' })
    .then(registration => {
      askState();
      if (registration.waiting && keptBefore) offerNewer(registration.waiting);
      registration.addEventListener('updatefound', () => {
        const coming = registration.installing;
        coming?.addEventListener('statechange', () => {
          if (coming.state === 'installed' && keptBefore) offerNewer(coming);
        });
      });
    })
    .catch(() => {
      // Keeping is refused or the network is away: the pages work as they are.
    });
}

const tell = (worker: ServiceWorker | null, order: KeepingOrder): void =>
  worker?.postMessage(order);

function askState(): void {
  navigator.serviceWorker.ready.then(({ active }) => tell(active, { order: 'say' }));
}

function showState(place: HTMLElement, state: KeepingState): void {
  const kept = document.createElement('p');
  kept.textContent = offlineWords.kept;
  const parts: HTMLElement[] = [kept];
  if (state.recordingBytes > 0) parts.push(recordingsChoice(state));
  if (state.recordings === 'failed') {
    const failed = document.createElement('p');
    failed.textContent = offlineWords.recordingsFailed;
    parts.push(failed);
  }
  place.querySelector('[data-state]')?.replaceChildren(...parts);
  place.hidden = false;
}

function recordingsChoice(state: KeepingState): HTMLElement {
  const label = document.createElement('label');
  const box = document.createElement('input');
  box.type = 'checkbox';
  box.checked = state.recordings === 'kept';
  box.addEventListener('change', () =>
    tell(navigator.serviceWorker.controller, { order: 'recordings', keep: box.checked }),
  );
  const size = sizeWords(offlineWords.decimal, state.recordingBytes);
  label.append(box, ` ${offlineWords.recordings(size)}`);
  return label;
}

function offerNewer(waiting: ServiceWorker): void {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = offlineWords.show;
  button.addEventListener('click', () => tell(waiting, { order: 'take-over' }));
  const note = document.querySelector<HTMLElement>('[data-newer]');
  if (!note) return;
  note.replaceChildren(`${offlineWords.newer} `, button);
  note.hidden = false;
}
