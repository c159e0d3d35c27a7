/** Puts an open popover under what opened it, or above where there is no room; always inside the window. */
const MARGIN_PX = 8;

export function place(
  popover: HTMLElement,
  anchor: Element,
  align: 'start' | 'middle' | 'end' = 'start',
): void {
  const at = anchor.getBoundingClientRect();
  const size = popover.getBoundingClientRect();
  const wanted = {
    start: at.left,
    middle: at.left + at.width / 2 - size.width / 2,
    end: at.right - size.width,
  }[align];
  const left = Math.max(MARGIN_PX, Math.min(wanted, innerWidth - size.width - MARGIN_PX));
  const below = at.bottom + MARGIN_PX;
  const above = at.top - size.height - MARGIN_PX;
  const fits = below + size.height + MARGIN_PX <= innerHeight || above < MARGIN_PX;
  popover.style.left = `${left}px`;
  popover.style.top = `${fits ? below : above}px`;
}
