import type { Page } from 'playwright-core';

/** Opens a page of a site, and waits until its scripts have taken over their parts of it. */
export async function openAwake(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await awake(page);
}

/**
 * The player, the recordings and the page of what to play today wake after the page has loaded
 * (`fetchLater` in `src/browser/page.ts`); a recording knows its phrases by its length.
 */
export async function awake(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const asleep = 'form[data-player][hidden], .clip-panel[hidden], [data-review][hidden]';
    const media = [...document.querySelectorAll<HTMLMediaElement>('.clip-media')];
    const hasEnded = (m: HTMLMediaElement) => m.networkState === HTMLMediaElement.NETWORK_NO_SOURCE;
    const isKnown = (m: HTMLMediaElement) => m.readyState >= HTMLMediaElement.HAVE_METADATA;
    return !document.querySelector(asleep) && media.every(m => isKnown(m) || hasEnded(m));
  });
}
