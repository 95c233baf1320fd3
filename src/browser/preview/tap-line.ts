import { clipLine, type TappedCue } from '../../../shared/clips/tap-cues.ts';
import type { PreviewBook } from '../../../shared/preview-news.ts';
import { previewWords } from '../../../shared/words/en/preview.ts';
import { button, element, field, pick } from './tap-parts.ts';

const { tap: words } = previewWords;

/** What a clip says besides its cues, to be filled in, and the finished line to be copied. */
export function tapLine(book: PreviewBook, onEdit: () => void) {
  const tune = pick(
    words.tune,
    book.tunes.map(({ id, title }) => [id, title] as const),
  );
  const recording = pick(
    words.recording,
    book.recordings.map(path => [path, path] as const),
  );
  const name = field(words.words, 'text');
  const learner = field(words.learner, 'checkbox');
  const consent = field(words.consent, 'text');
  const consentHow = element('p', 'tap-hint', words.consentHow);
  const fields = element('div', 'tap-choose');
  fields.append(tune.label, recording.label, name.label, learner.label, consent.label, consentHow);
  for (const { input } of [name, learner, consent]) input.addEventListener('input', onEdit);

  const text = document.createElement('textarea');
  text.readOnly = true;
  text.rows = 4;
  text.spellcheck = false;
  text.setAttribute('aria-label', words.line);
  const copy = button(words.copy, 'tap-copy');
  const copied = element('p', 'tap-hint');
  copied.setAttribute('role', 'status');
  copy.addEventListener('click', async () => {
    try {
      await navigator.clipboard.writeText(text.value);
      copied.textContent = words.copied;
    } catch {
      text.select();
      copied.textContent = words.notCopied;
    }
  });
  return {
    tune: tune.select,
    recording: recording.select,
    fields,
    line: [text, copy, copied],
    show(cues: readonly TappedCue[]): void {
      name.input.placeholder = tune.select.selectedOptions[0]?.textContent ?? '';
      const facts = {
        words: name.input.value || name.input.placeholder,
        src: recording.select.value,
        of: tune.select.value,
        learner: learner.input.checked,
        consent: consent.input.value,
      };
      text.value = clipLine(facts, cues);
      consent.label.hidden = consentHow.hidden = !learner.input.checked;
      copied.textContent = '';
    },
  };
}
