import type { Page } from 'playwright-core';
import { Box3, type Object3D, Vector3 } from 'three';
import type { Command } from '../../src/jobs/job.ts';
import { hitAt, onPump, pixelOf, type Stage, untilStill as settle, stage } from '../bench-scene/scene.ts';
import { untilStill } from './hands.ts';

type Spot = { x: number; y: number };

/** The picture as a pointer works it: pieces are found by looking at a scene of the same set that is kept in step. */
export class Picture {
  readonly #page: Page;
  readonly #twin: Stage = stage();
  #view = 'set';
  #size = { width: 0, height: 0 };
  #at: Spot = { x: 0, y: 0 };

  constructor(page: Page) {
    this.#page = page;
  }

  /** Chooses a viewpoint and waits until the camera is there. */
  async look(view: string): Promise<void> {
    this.#view = view;
    await this.#page.getByLabel('View', { exact: true }).selectOption(view);
    const box = await this.#page.locator('.scene canvas').boundingBox();
    if (box === null) throw new Error('there is no picture');
    this.#at = box;
    this.#size = { width: box.width, height: box.height };
    await this.#page.waitForTimeout(400);
  }

  /** What was done on the page is done to the twin as well. */
  async done(...commands: Command[]): Promise<void> {
    await untilStill(this.#page);
    for (const command of commands) this.#twin.session.do(command);
    settle(this.#twin.session);
    this.#twin.pose();
    const refusal = this.#page.locator('.log li[data-tone="refusal"]');
    if ((await refusal.count()) > 0) throw new Error(`refused: ${await refusal.last().textContent()}`);
  }

  /** The tag beside the pointer and the words of a drag. */
  words(): Promise<string> {
    return this.#page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.scene-tag:not([data-kind="chosen"])')]
        .filter((tag) => tag.style.visibility === 'visible')
        .map((tag) => tag.textContent)
        .join(' '),
    );
  }

  /** A place on the page where a piece is seen, as far within its outline as may be; throws when it is hidden. */
  async spotOf(piece: string, where: (pixel: Spot) => boolean = () => true): Promise<Spot> {
    const { group } = this.#twin.rig.piece(piece);
    const inside = this.#grid(group).filter(
      (pixel) => where(pixel) && hitAt(this.#twin, this.#view, pixel, this.#size, group) !== null,
    );
    const depth = ({ x, y }: Spot) => inside.filter((one) => Math.hypot(one.x - x, one.y - y) < 16).length;
    const order = inside.map((pixel) => ({ pixel, depth: depth(pixel) })).sort((a, b) => b.depth - a.depth);
    for (const { pixel } of order) {
      if (hitAt(this.#twin, this.#view, pixel, this.#size) !== piece) continue;
      const spot = { x: this.#at.x + pixel.x, y: this.#at.y + pixel.y };
      // What lies over the picture takes the pointer away from it.
      const top = await this.#page.evaluate(({ x, y }) => document.elementFromPoint(x, y)?.tagName, spot);
      if (top === 'CANVAS') return spot;
    }
    throw new Error(`${piece} is not seen from ${this.#view}`);
  }

  /** Pixels all over the part of the picture that something takes up. */
  #grid(group: Object3D): Spot[] {
    const { min, max } = new Box3().setFromObject(group);
    const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => {
      const place = new Vector3(i & 1 ? max.x : min.x, i & 2 ? max.y : min.y, i & 4 ? max.z : min.z);
      return pixelOf(this.#twin, this.#view, place, this.#size);
    });
    const [left, right] = [Math.min(...corners.map(({ x }) => x)), Math.max(...corners.map(({ x }) => x))];
    const [top, bottom] = [Math.min(...corners.map(({ y }) => y)), Math.max(...corners.map(({ y }) => y))];
    const step = Math.max(3, (right - left) / 40, (bottom - top) / 40);
    const all: Spot[] = [];
    for (let y = Math.max(1, top); y < Math.min(this.#size.height, bottom); y += step)
      for (let x = Math.max(1, left); x < Math.min(this.#size.width, right); x += step) all.push({ x, y });
    return all;
  }

  async #press(spot: Spot, told: RegExp): Promise<void> {
    const { mouse } = this.#page;
    await mouse.move(spot.x - 3, spot.y);
    await mouse.move(spot.x, spot.y);
    // A hand never rests quite still: what has come under the pointer meanwhile is found by that.
    for (let i = 0; i < 40 && !told.test(await this.words()); i += 1) {
      await this.#page.waitForTimeout(50);
      await mouse.move(spot.x + (i % 2), spot.y);
    }
    const words = await this.words();
    if (!told.test(words)) throw new Error(`the picture says "${words}" where ${told} was expected`);
    await mouse.down();
  }

  /** Clicks a piece once the tag has foretold what that does. */
  async click(piece: string, told: RegExp, where?: (pixel: Spot) => boolean): Promise<void> {
    await this.#press(await this.spotOf(piece, where), told);
    await this.#page.mouse.up();
    await untilStill(this.#page);
  }

  /** What was in the hand is out of it, because it was laid on something. */
  laidOn(): void {
    this.#twin.session.look({ inHand: 'hand' });
    this.#twin.pose();
  }

  /** Whether a pixel is near a height of the pump's axis, given in m from its cam end. */
  nearPump(height: number): (pixel: Spot) => boolean {
    const at = pixelOf(this.#twin, this.#view, onPump(this.#twin, 0, height, 0), this.#size);
    return ({ x, y }) => Math.hypot(x - at.x, y - at.y) < 12;
  }

  /** Takes a tool up from the bench, or lays it down again. */
  async take(tool: string): Promise<void> {
    const { session } = this.#twin;
    const has = session.store.getState().inHand === tool;
    await this.click(tool, has ? /lay it down/ : /pick it up/);
    session.look({ inHand: has ? 'hand' : tool });
    this.#twin.pose();
  }

  /** Drags a piece by so many pixels and lets go once the words say what will be done. */
  async drag(
    piece: string,
    [dx, dy]: readonly [number, number],
    told: RegExp,
    until: RegExp,
    where?: (pixel: Spot) => boolean,
  ): Promise<void> {
    const from = await this.spotOf(piece, where);
    await this.#press(from, told);
    await this.#move((i) => ({ x: from.x + (dx * i) / 10, y: from.y + (dy * i) / 10 }), until, 16);
  }

  /** Swings a spanner about a piece, anticlockwise to undo, until the words say what will be done. */
  async swing(piece: string, told: RegExp, until: RegExp, way: 1 | -1 = 1): Promise<void> {
    const from = await this.spotOf(piece);
    await this.#press(from, told);
    const arm = 80;
    const turned = (i: number): Spot => {
      const angle = -way * i * 0.16;
      return { x: from.x + arm * Math.cos(angle), y: from.y + arm * Math.sin(angle) };
    };
    await this.#move(turned, until, 60);
  }

  async #move(way: (i: number) => Spot, until: RegExp, most: number): Promise<void> {
    const { mouse } = this.#page;
    let words = '';
    for (let i = 1; i <= most; i += 1) {
      const { x, y } = way(i);
      await mouse.move(x, y);
      await this.#page.waitForTimeout(35);
      words = await this.words();
      if (!until.test(words)) continue;
      await mouse.up();
      await untilStill(this.#page);
      return;
    }
    throw new Error(`the picture says "${words}" where ${until} was expected`);
  }
}
