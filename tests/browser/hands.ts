import type { Locator, Page } from 'playwright-core';
import type { Command } from '../../src/jobs/job.ts';
import { adviceText, causeText } from '../../src/jobs/words.ts';
import { choicesOf } from '../../src/panels/acts/act.ts';
import { sentence } from '../../src/panels/format.ts';
import type { Move, Way } from './plan.ts';

/** How a person works the page: with a pointer, or with the keyboard and nothing else. */
export interface Hands {
  press(target: Locator): Promise<void>;
  /** Picks an option of a list by its value. */
  choose(target: Locator, value: string): Promise<void>;
  write(target: Locator, value: string): Promise<void>;
}

export function pointer(): Hands {
  return {
    press: (target) => target.click(),
    choose: async (target, value) => void (await target.selectOption(value)),
    write: (target, value) => target.fill(value),
  };
}

/** Walks to a control with Tab or Shift+Tab, whichever is nearer, as somebody without a pointer does. */
async function walkTo(page: Page, target: Locator): Promise<void> {
  const away = await target.evaluate((element) => {
    const open = document.querySelector('dialog[open]') ?? document;
    const stops = [
      ...open.querySelectorAll<HTMLElement>('a[href],button,input,select,summary,[tabindex]'),
    ].filter((one) => one.tabIndex >= 0 && !one.hasAttribute('disabled') && one.checkVisibility());
    const here = stops.indexOf(
      document.activeElement instanceof HTMLElement ? document.activeElement : document.body,
    );
    return stops.indexOf(element as HTMLElement) - here;
  });
  const key = away < 0 ? 'Shift+Tab' : 'Tab';
  for (let i = 0; i < Math.abs(away) + 3; i += 1) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press(key);
  }
  if (!(await target.evaluate((element) => element === document.activeElement))) {
    throw new Error(`the keyboard does not reach ${target}`);
  }
}

/** Tab stops at a group's chosen button only; the arrows go through the others. */
async function pickRadio(page: Page, target: Locator): Promise<void> {
  const group = await target.getAttribute('name');
  await walkTo(page, page.locator(`input[type=radio][name="${group}"]:checked`));
  for (let i = 0; i < 5 && !(await target.isChecked()); i += 1) await page.keyboard.press('ArrowDown');
}

export function keyboard(page: Page): Hands {
  return {
    async press(target) {
      if ((await target.getAttribute('type')) === 'radio') {
        await pickRadio(page, target);
        return;
      }
      await walkTo(page, target);
      await page.keyboard.press(
        await target.evaluate((e) => (e instanceof HTMLInputElement ? 'Space' : 'Enter')),
      );
    },
    async choose(target, value) {
      await walkTo(page, target);
      const steps = await target.evaluate((element, wanted) => {
        const list = element as HTMLSelectElement;
        return [...list.options].findIndex((option) => option.value === wanted) - list.selectedIndex;
      }, value);
      for (let i = 0; i < Math.abs(steps); i += 1)
        await page.keyboard.press(steps > 0 ? 'ArrowDown' : 'ArrowUp');
    },
    async write(target, value) {
      await walkTo(page, target);
      await page.keyboard.press('Control+a');
      await page.keyboard.type(value);
    },
  };
}

/** Waits until nothing of the set moves any more; a running engine is watched for a moment. */
export async function untilStill(page: Page, alsoRunning = false): Promise<void> {
  await page.waitForFunction(
    (stopped) => {
      const job = document.querySelector<HTMLElement>('.job');
      return job?.dataset.live === 'false' || (!stopped && job?.dataset.running === 'true');
    },
    alsoRunning,
    { timeout: 60_000 },
  );
}

async function open(hands: Hands, button: Locator): Promise<void> {
  if ((await button.getAttribute('aria-expanded')) !== 'true') await hands.press(button);
}

/** Opens the entry of a thing in the list of acts; the bench then rings it. */
async function openThing(page: Page, hands: Hands, group: string, name: string): Promise<Locator> {
  const acts = page.locator('.acts');
  await open(hands, acts.getByRole('button', { name: group, exact: true }));
  const thing = acts
    .locator('.thing')
    .filter({ has: page.locator('.thing-name > span:first-child', { hasText: exactly(name) }) });
  await open(hands, thing.locator('.thing-name'));
  return thing;
}

/** Draws the cord on the picture itself: finds the handle by the ring round it, takes it and drags. */
export async function drawCord(page: Page): Promise<void> {
  await openThing(page, pointer(), 'The set', 'Starting cord');
  const ring = page.locator('.scene-ring');
  await ring.waitFor({ state: 'visible' });
  await page.waitForTimeout(1500);
  const box = await ring.boundingBox();
  if (box === null) throw new Error('the bench does not ring the cord');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x - 2, y);
  await page.mouse.move(x, y);
  await page.locator('.scene-tag', { hasText: 'Starting cord' }).first().waitFor({ state: 'visible' });
  await page.mouse.down();
  for (let i = 1; i <= 12; i += 1) await page.mouse.move(x - 12 * i, y - 2 * i);
  await page.mouse.up();
  await untilStill(page);
}

async function doAct(page: Page, hands: Hands, way: Way): Promise<void> {
  const thing = await openThing(page, hands, way.group, way.thing);
  const form = thing
    .locator('form')
    .filter({ has: page.getByRole('button', { name: way.act.label, exact: true }) });
  for (const choice of choicesOf(way.act, way.values)) {
    const value = way.values[choice.key];
    const field = form.getByLabel(choice.label, { exact: true });
    if (choice.kind === 'yes') {
      if ((await field.isChecked()) !== value) await hands.press(field);
    } else if (choice.kind === 'pick') await hands.choose(field, String(value));
    else await hands.write(field, String(value));
  }
  await hands.press(form.getByRole('button', { name: way.act.label, exact: true }));
}

const exactly = (text: string) => new RegExp(`^${text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);

async function doOnCard(page: Page, hands: Hands, command: Command): Promise<void> {
  const card = page.locator('.side');
  switch (command.do) {
    case 'strikeOut':
      await hands.press(card.locator('button.cause', { hasText: sentence(causeText(command.cause)) }));
      return;
    case 'nameCause': {
      const form = card.locator('.card-more', { has: page.locator('.name-cause') });
      await hands.press(form.locator('summary'));
      await hands.choose(form.getByLabel('The cause is'), command.cause);
      await hands.choose(form.getByLabel('The finding that shows it'), command.because);
      await hands.press(form.getByRole('button', { name: 'Write it down' }));
      return;
    }
    case 'judgePair':
      await hands.press(
        card.getByRole('button', {
          name: command.verdict === 'fitForUse' ? 'Fit for use' : 'Replace the pair',
        }),
      );
      return;
    case 'writeCard':
      for (const id of command.advice) await hands.press(card.getByLabel(adviceText(id)));
      await hands.press(card.getByRole('button', { name: 'Write it on the card' }));
      return;
    case 'handOver':
      await hands.press(card.getByRole('button', { name: 'Hand over' }));
      await hands.press(page.getByRole('button', { name: 'Hand it over' }));
      return;
    default:
      throw new Error(`no form on the card for ${command.do}`);
  }
}

/** Makes one move through the page and waits until what it set going has come to rest. */
export async function make(page: Page, hands: Hands, move: Move): Promise<void> {
  if (move.kind === 'pause') await page.waitForTimeout(Math.min(3, move.seconds) * 1000);
  else if (move.kind === 'card') await doOnCard(page, hands, move.command);
  else await doAct(page, hands, move.way);
  const stops =
    move.kind === 'act' && move.way.command.do === 'moveStopLever' && move.way.command.to === 'stop';
  await untilStill(page, stops);
}
