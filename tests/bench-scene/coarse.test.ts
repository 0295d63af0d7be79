import { type BufferGeometry, type Mesh, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { coarseForms } from '../../src/bench/look/coarseForms.ts';
import { stage } from './scene.ts';

const at = stage();
const forms = coarseForms(at.rig.root, new Set());
/** A picture of half the pixels, seen from so far that a pixel is about two millimetres at the set, m. */
const EYE = new Vector3(0, 0.3, 3);
const PIXEL = 0.0009;
/** How far a form may be off in the picture, pixels. */
const UNSEEN = 0.6;

/** Shows the scene coarse once every form has been made. */
async function coarse(): Promise<void> {
  at.pose({ apart: 1 });
  for (let i = 0; i < 400; i++) {
    forms.show(true, EYE, PIXEL);
    if (i < 20) await new Promise((done) => setTimeout(done, 10));
  }
}

/** Share of a form's surface that is shaded as if it were turned by more than 45 degrees from how it lies. */
function misshaded(form: BufferGeometry): number {
  const index = form.getIndex()?.array ?? [];
  const corner = (t: number, name: 'position' | 'normal'): Vector3 =>
    new Vector3().fromBufferAttribute(form.getAttribute(name), index[t] ?? 0);
  let [all, off] = [0, 0];
  for (let t = 0; t < index.length; t += 3) {
    const [a, b, c] = [corner(t, 'position'), corner(t + 1, 'position'), corner(t + 2, 'position')];
    const across = b.sub(a).cross(c.sub(a));
    const area = across.length() / 2;
    if (area === 0) continue;
    all += area;
    across.normalize();
    const worst = Math.min(...[t, t + 1, t + 2].map((k) => corner(k, 'normal').dot(across)));
    if (worst < Math.SQRT1_2) off += area;
  }
  return off / all;
}

const triangles = (form: BufferGeometry): number => (form.getIndex()?.count ?? 0) / 3;

describe('coarse forms for machines without a graphics card', async () => {
  const wholes = new Map<Mesh, BufferGeometry>(
    at.rig.all.map(({ whole }) => [whole, whole.geometry as BufferGeometry]),
  );
  await coarse();
  const pair = (id: string): { whole: BufferGeometry; shown: BufferGeometry } => {
    const mesh = at.rig.piece(id).whole;
    return { whole: wholes.get(mesh) ?? mesh.geometry, shown: mesh.geometry };
  };

  it.each(['pumpBody', 'windowCover', 'pumpNut1', 'stopLever', 'cap', 'engine', 'generator'])(
    'draw %s with far fewer triangles, shaded as it lies, no larger or smaller than may be seen',
    (id) => {
      const { whole, shown } = pair(id);
      expect(triangles(shown)).toBeLessThan(triangles(whole) * 0.5);
      // Chosen so that forms made without regard to normals (36 to 93 per cent at this error) fail.
      expect(misshaded(shown)).toBeLessThan(0.25);
      const far = at.rig.piece(id).group.position.distanceTo(EYE);
      const used = boxOf(shown);
      const box = boxOf(whole);
      for (const end of ['min', 'max'] as const)
        expect(used[end].distanceTo(box[end])).toBeLessThan(UNSEEN * PIXEL * far * Math.sqrt(3));
    },
  );

  it('leave alone springs, which are bent while they are shown, and sheet that is thinner than the error', () => {
    for (const id of ['returnSpring', 'valveSpring', 'speedSpring', 'shim0', 'shim1']) {
      const { whole, shown } = pair(id);
      expect(shown).toBe(whole);
    }
  });

  it('are given back when the picture is to be fine', () => {
    forms.show(false, EYE, PIXEL);
    for (const [mesh, whole] of wholes) expect(mesh.geometry).toBe(whole);
  });
});

/** Box of the vertices that triangles use. */
function boxOf(form: BufferGeometry): { min: Vector3; max: Vector3 } {
  const [min, max] = [new Vector3(9, 9, 9), new Vector3(-9, -9, -9)];
  const p = new Vector3();
  for (const k of form.getIndex()?.array ?? []) {
    p.fromBufferAttribute(form.getAttribute('position'), k);
    min.min(p);
    max.max(p);
  }
  return { min, max };
}
