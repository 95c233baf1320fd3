import fc from 'fast-check';
import { JSDOM } from 'jsdom';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { keepTwins, patchPage } from '../../src/browser/preview/refresh-page.ts';

const { window } = new JSDOM('<!doctype html><body></body>');

beforeAll(() => {
  vi.stubGlobal('document', window.document);
  vi.stubGlobal('Element', window.Element);
});
afterAll(() => vi.unstubAllGlobals());

const bodyOf = (html: string): HTMLElement =>
  new window.DOMParser().parseFromString(`<!doctype html><body>${html}</body>`, 'text/html').body;

/** A page as read and, in the document, as a script has changed it: what it holds shows `live`. */
function openPage(html: string) {
  document.body.innerHTML = html;
  const page = keepTwins(document.body);
  for (const held of document.body.querySelectorAll('[data-held]')) held.append('live');
  return page;
}

/** The page as it stands, without what scripts have put in. */
const standing = (): string => document.body.innerHTML.replaceAll('live', '');

const tune = '<section data-held="1"><b>Tune</b></section>';

describe('a page is brought up to date in place', () => {
  it.each([
    ['a word', `<h1>Wet</h1><p>Slowly.</p>${tune}`, `<h1>Wet</h1><p>Slower.</p>${tune}`],
    ['a paragraph before a tune', `<p>a</p>${tune}`, `<p>new</p><p>a</p>${tune}`],
    ['here and there', `<p>a</p><p>b</p>${tune}<p>c</p>`, `<p>b</p>${tune}<p>C</p><p>d</p>`],
    ['deep inside', `<div><p>a <i>b</i></p>${tune}</div>`, `<div><p>a <i>c</i></p>${tune}</div>`],
    ['what is for no script', `<p>a</p><noscript>x</noscript>`, `<p>b</p><noscript>x</noscript>`],
  ])('%s', (_, before, after) => {
    const page = openPage(before);
    const held = document.querySelector('[data-held]');
    expect(patchPage(page, bodyOf(after))).toBe(true);
    expect(standing()).toBe(after);
    expect(document.querySelector('[data-held]')).toBe(held);
  });

  it.each([
    ['a tune itself', tune, tune.replace('Tune', 'Other')],
    ['a tune that comes', '<p>a</p>', `<p>a</p>${tune}`],
    ['a tune that goes', `<p>a</p>${tune}`, '<p>a</p>'],
    ['its data', tune, tune.replace('"1"', '"2"')],
    ['a form', '<form><p>a</p></form>', '<form><p>b</p></form>'],
  ])('and is left as it is where a script has hold of it: %s', (_, before, after) => {
    const page = openPage(before);
    expect(patchPage(page, bodyOf(after))).toBe(false);
    expect(standing()).toBe(before);
  });

  it('goes by the body itself only where that is another', () => {
    document.body.innerHTML = '<p>a</p>';
    document.body.dataset.later = 'player';
    const page = keepTwins(document.body);
    delete document.body.dataset.later;
    const next = bodyOf('<p>b</p>');
    expect(patchPage(page, next)).toBe(false);
    next.dataset.later = 'player';
    expect(patchPage(page, next)).toBe(true);
    expect(standing()).toBe('<p>b</p>');
  });

  it('and where a script has moved or taken away what would change', () => {
    const page = openPage('<p>a</p><div></div>');
    document.querySelector('div')?.append(document.querySelector('p') as Node);
    expect(patchPage(page, bodyOf('<i>b</i><div></div>'))).toBe(false);
    document.querySelector('p')?.remove();
    expect(patchPage(page, bodyOf('<p>b</p><div></div>'))).toBe(false);
  });

  it('shows the new text after any changes whatever, or says that it cannot', () => {
    const { html } = fc.letrec<{ html: string; node: string }>(tie => ({
      node: fc.oneof(
        { maxDepth: 3 },
        fc.constantFrom('one', 'two', '<hr>', '<p>a</p>', '<p>b</p>', tune),
        fc
          .tuple(fc.constantFrom('div', 'section', 'em'), tie('html'))
          .map(([name, inner]) => `<${name}>${inner}</${name}>`),
      ),
      html: fc.array(tie('node'), { maxLength: 5 }).map(nodes => nodes.join('')),
    }));
    let patched = 0;
    fc.assert(
      fc.property(html, fc.array(html, { minLength: 1, maxLength: 3 }), (first, nexts) => {
        const page = openPage(first);
        for (const next of nexts) {
          // A tune anywhere may only be passed by, so that what a script did to it stays.
          const tunes = [...document.querySelectorAll('[data-held]')];
          if (!patchPage(page, bodyOf(next))) return;
          patched++;
          expect(standing()).toBe(bodyOf(next).innerHTML);
          expect([...document.querySelectorAll('[data-held]')]).toEqual(tunes);
        }
      }),
      { numRuns: 300 },
    );
    expect(patched).toBeGreaterThan(50);
  });
});
