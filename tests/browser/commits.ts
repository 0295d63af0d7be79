import type { Page } from 'playwright-core';

/**
 * Counts how often React commits a change of the scene in a page that is opened after this.
 *
 * React tells a developer's tool of every commit, also in a built page; a scene's root is not held by an element.
 */
export async function countCommits(page: Page): Promise<{ inScene: () => Promise<number> }> {
  await page.addInitScript(() => {
    const counts = { scene: 0, roots: 0 };
    const hook = {
      supportsFiber: true,
      renderers: new Map(),
      inject: () => {
        counts.roots += 1;
        return counts.roots;
      },
      onCommitFiberUnmount: () => undefined,
      onCommitFiberRoot: (_: number, root: { containerInfo: unknown }) => {
        if (!(root.containerInfo instanceof Node)) counts.scene += 1;
      },
    };
    Object.assign(globalThis, { __REACT_DEVTOOLS_GLOBAL_HOOK__: hook, __commits: counts });
  });
  return {
    inScene: () =>
      page.evaluate(() => (globalThis as unknown as { __commits: { scene: number } }).__commits.scene),
  };
}
