import { drillWords } from '../../shared/words/en/drills.ts';
import { openDrill } from './drills/open-drill.ts';

/**
 * The drills of a page. Each stands there whole, question and fold-out answer; this script takes it
 * over when it is about to be seen, and then asks the next ones with the engine that made the first.
 * Nothing is counted, kept or sent.
 */
function take(section: HTMLElement): void {
  if (section.dataset.taken !== undefined) return;
  section.dataset.taken = '';
  openDrill(section).catch((error: unknown) => {
    delete section.dataset.taken;
    if (!section.querySelector('.drill-lost')) {
      const said = document.createElement('p');
      said.className = 'notice drill-lost';
      said.textContent = drillWords.notLoaded;
      section.append(said);
    }
    console.error(error);
  });
}

const near = new IntersectionObserver(
  entries => {
    for (const { isIntersecting, target } of entries) {
      if (isIntersecting) take(target as HTMLElement);
    }
  },
  { rootMargin: '400px' },
);
for (const section of document.querySelectorAll<HTMLElement>('.drill')) near.observe(section);
