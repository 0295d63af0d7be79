import { expect, it } from 'vitest';
import { keyboard, make, pointer, untilStill } from './hands.ts';
import { shot, withApp } from './harness.ts';
import { carefulPlan, type Move } from './plan.ts';

const MINUTES = 60_000;

/** Pictures taken on the way, by the move that has just been made. */
function pictureAfter(move: Move, next: Move | undefined): string | null {
  if (move.kind !== 'act') return null;
  const { command } = move.way;
  if (command.do === 'check' && command.what === 'pinFollows') return 'window-open-with-pin';
  if (command.do === 'check' && command.what === 'cupEnd') return 'pump-off-cup-end';
  const nextIsCheck = next?.kind === 'act' && next.way.command.do === 'check';
  if (command.do === 'strike' && nextIsCheck) return 'plunger-freed';
  if (command.do === 'loosen' && command.joint === 'bleedScrew') return 'bleeding';
  return null;
}

async function doWholeJob(how: 'pointer' | 'keyboard'): Promise<void> {
  await withApp({ reducedMotion: 'reduce' }, async ({ page }) => {
    const hands = how === 'pointer' ? pointer() : keyboard(page);
    await shot(page, `${how}-1-first-screen`);
    await hands.press(page.getByRole('radio', { name: /Assessed/ }));
    await hands.press(page.getByRole('button', { name: 'Start the job' }));
    await page.locator('.job').waitFor();
    await untilStill(page);
    const moves = carefulPlan();
    let pictures = 1;
    for (const [index, move] of moves.entries()) {
      await make(page, hands, move).catch((error: unknown) => {
        throw new Error(
          `move ${index + 1}, ${JSON.stringify(move.kind === 'act' ? move.way.command : move)}: ${error}`,
        );
      });
      const name = pictureAfter(move, moves[index + 1]);
      if (name !== null) {
        pictures += 1;
        await page.waitForTimeout(800);
        await shot(page, `${how}-${pictures}-${name}`);
      }
    }
    const sheet = page.locator('.marks');
    await sheet.waitFor();
    await shot(page, `${how}-9-marking-sheet`);
    await expect(sheet.textContent()).resolves.toMatch(/Passed/);
    await expect(sheet.textContent()).resolves.toMatch(/started/i);
  });
}

it(
  'the whole job by pointer ends started, handed over and passed',
  () => doWholeJob('pointer'),
  12 * MINUTES,
);

it(
  'the whole job by keyboard alone ends started, handed over and passed',
  () => doWholeJob('keyboard'),
  15 * MINUTES,
);
