import { expect, it } from 'vitest';
import { shot, withApp } from './harness.ts';
import { Picture } from './picture.ts';

it(
  'the pump is taken off, read and soaked and the block laid on it, on the picture alone, each act foretold',
  () =>
    withApp({ path: '#/job/lambing-shed-lights/practice', reducedMotion: 'reduce' }, async ({ page }) => {
      await page.locator('.scene canvas').waitFor();
      const picture = new Picture(page);
      const foot = page.locator('.bench-foot');
      const log = page.locator('.log');
      await picture.look('set');
      await picture.click('stopLever', /move it to stop/);
      await picture.done({ do: 'moveStopLever', to: 'stop' });

      await picture.take('spanner');
      await picture.look('pump');
      await picture.swing('pipeAtPump', /swing the spanner/, /right off/);
      await picture.done({ do: 'loosen', joint: 'pipeAtPump', to: 'off', backup: false });
      await picture.look('injector');
      await picture.swing('pipeAtInjector', /swing the spanner/, /right off/);
      await picture.done({ do: 'loosen', joint: 'pipeAtInjector', to: 'off', backup: false });
      await picture.look('set');
      await picture.take('spanner');
      await picture.look('injector');
      await picture.drag('pipe', [-60, -60], /take it off/, /^take the injector pipe off/);
      await picture.done({ do: 'remove', part: 'pipe' });

      await picture.look('pump');
      await picture.drag('windowCover', [-60, 60], /take it off/, /^take the window cover off/);
      await picture.done({ do: 'remove', part: 'windowCover' });
      await shot(page, 'picture-window-off');
      await picture.look('set');
      await picture.take('screwdriver');
      await picture.look('pump');
      await picture.swing('hose', /swing the screwdriver/, /right off/);
      await picture.done({ do: 'loosen', joint: 'hoseClip', to: 'off', backup: false });
      await picture.look('set');
      await picture.take('screwdriver');
      await picture.look('pump');
      await picture.drag('hose', [70, -40], /take it off/, /^take the fuel hose off/);
      await picture.done({ do: 'remove', part: 'hose' });

      await picture.look('set');
      await picture.click('starter', /^/);
      await foot.getByRole('button', { name: 'Turn the flywheel' }).click();
      await foot.getByRole('button', { name: 'low side' }).click();
      await picture.done({ do: 'turnFlywheel', to: 'lowSide' });
      await picture.take('spanner');
      await picture.look('pump');
      for (const joint of ['pumpNut1', 'pumpNut2'] as const) {
        await picture.swing(joint, /swing the spanner/, /right off/);
        await picture.done({ do: 'loosen', joint, to: 'off', backup: false });
      }
      await picture.look('set');
      await picture.take('spanner');
      await picture.look('pump');
      await picture.drag(
        'pumpBody',
        [0, -90],
        /take it off/,
        /^take the pump off, the pin led through the window/,
      );
      await picture.done({ do: 'remove', part: 'pump', guidePin: true });

      await picture.look('bench');
      await picture.click('pumpBody', /carry it/);
      await page.getByRole('button', { name: 'Turn over' }).click();
      await picture.done({ do: 'placePump', on: 'hand', camUp: true });
      await foot.getByRole('button', { name: 'Look at the cup end' }).click();
      await expect.poll(() => log.textContent()).toMatch(/up in the body/);
      await picture.take('releasingSolvent');
      await picture.click('pumpBody', /soak the pair/);
      await picture.done({ do: 'soak', with: 'releasingSolvent' });

      // Stuck at the outlet end, the plunger goes towards the cam end: that is the end to strike. Common practice.
      await picture.take('woodBlock');
      await picture.click('pumpBody', /block on this end/, picture.nearPump(0.02));
      picture.laidOn();
      await picture.look('set');
      await picture.take('mediumHammer');
      await shot(page, 'picture-block-laid');
    }),
  170_000,
);
