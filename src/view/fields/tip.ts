/** One plain sentence about a control: shown on hover and on keyboard focus, read out as its description. */
import type { Attachment } from 'svelte/attachments';
import { place } from './place';

const WAIT_MS = 450;
const ENDS = ['pointerleave', 'pointerdown', 'click', 'focusout'];

let bubble: HTMLElement | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;

function theBubble(): HTMLElement {
  if (bubble) return bubble;
  bubble = document.createElement('div');
  bubble.className = 'tip';
  bubble.popover = 'manual';
  // A screen reader has the same words as the control's description.
  bubble.ariaHidden = 'true';
  document.body.append(bubble);
  return bubble;
}

function hide(): void {
  clearTimeout(timer);
  if (bubble?.matches(':popover-open')) bubble.hidePopover();
}

function show(element: Element, words: string): void {
  // What it opens stands where its tip would.
  if (!element.isConnected || element.ariaExpanded === 'true') return;
  const tip = theBubble();
  tip.textContent = words;
  tip.showPopover();
  place(tip, element, 'middle');
}

export function tip(words: string): Attachment<HTMLElement | SVGElement> {
  return (element) => {
    element.setAttribute('aria-description', words);
    const soon = (event: Event) => {
      // A finger hides what it touches: there the description and the label must do.
      if (event instanceof PointerEvent && event.pointerType === 'touch') return;
      clearTimeout(timer);
      timer = setTimeout(() => show(element, words), WAIT_MS);
    };
    const focused = () => {
      if (element.matches(':focus-visible')) soon(new Event('focus'));
    };
    const escape = (event: Event) => {
      if (event instanceof KeyboardEvent && event.key === 'Escape') hide();
    };
    element.addEventListener('pointerenter', soon);
    element.addEventListener('focusin', focused);
    for (const end of ENDS) element.addEventListener(end, hide);
    element.addEventListener('keydown', escape);
    return () => {
      hide();
      element.removeEventListener('pointerenter', soon);
      element.removeEventListener('focusin', focused);
      for (const end of ENDS) element.removeEventListener(end, hide);
      element.removeEventListener('keydown', escape);
    };
  };
}
