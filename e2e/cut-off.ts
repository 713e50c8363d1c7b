import type { Page } from '@playwright/test';

/**
 * Text that its own box cuts off, or that runs over the edge of the window. `within` a dialog nothing else is looked at:
 * it stands over the page and leaves it as it was.
 */
export const cutOff = (page: Page, within = '') =>
  page.evaluate(
    (looked) =>
      [...document.querySelectorAll<HTMLElement>(looked)].flatMap((element) => {
        const own = [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent!.trim() !== '');
        const { width, height, left, right, bottom } = element.getBoundingClientRect();
        if (!own || width < 2 || height < 2 || element.closest('.unseen, .skip, .scroll tbody, svg, option, select')) return [];
        const { overflowX, overflowY } = getComputedStyle(element);
        const hidden =
          (overflowX !== 'visible' && element.scrollWidth > element.clientWidth + 1) ||
          (overflowY !== 'visible' && element.scrollHeight > element.clientHeight + 2);
        // What scrolls sideways in a box of its own may stand outside of the window.
        let box = element.parentElement;
        while (box && !/auto|scroll/.test(getComputedStyle(box).overflowX)) box = box.parentElement;
        const scrolls = box !== null;
        const outside = !scrolls && (left < -1 || right > innerWidth + 1);
        // A button cuts off what does not fit in it.
        const button = element.closest('button')?.getBoundingClientRect();
        const spilt = button !== undefined && (bottom > button.bottom + 1 || right > button.right + 1);
        return hidden || outside || spilt
          ? [`${element.tagName}.${element.className}: ${element.textContent!.trim().slice(0, 60)}`]
          : [];
      }),
    within.startsWith('dialog') ? `${within} *` : 'main *, header *, nav *, dialog[open] *',
  );
