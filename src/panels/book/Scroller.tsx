import type { ReactNode } from 'react';

/** A box that scrolls by itself, so that a wide table never widens the page; keys reach it. */
export function Scroller({ label, children }: { label: string; children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard
    <section className="book-scroller" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
