import { Box3, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { coil } from '../../src/bench/form/coil.ts';
import { dimsOf } from '../../src/bench/form/dims.ts';
import type { Piece } from '../../src/bench/rig/piece.ts';
import { springFree, springRoom } from '../../src/bench/rig/pumpPieces.ts';
import { camAngleAt } from '../../src/bench/rig/reading.ts';
import { camHeight } from '../../src/bench/rig/setPieces.ts';
import { camAngle, camLift } from '../../src/sim/set/kinematics.ts';
import { camRise } from '../../src/solids/camLaw.ts';
import { definition as solidDefinition } from '../../src/solids/definition.ts';
import { definition, stage } from './scene.ts';

const def = definition();
// Building the scene takes a while: one of the first job serves all that only looks.
const first = stage();

/** Highest point of a piece's mesh in the world within `reach` of the pump's axis to either side, m. */
function highest({ whole }: Piece, reach: number): number {
  const position = whole.geometry.getAttribute('position');
  const axis = first.rig.piece('pumpBody').group.position.x;
  const p = new Vector3();
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < position.count; i++) {
    p.fromBufferAttribute(position, i).applyMatrix4(whole.matrixWorld);
    if (Math.abs(p.x - axis) <= reach) high = Math.max(high, p.y);
  }
  return high;
}

describe('the cam that is drawn', () => {
  it('stands at the model’s cam angle and touches the cup at the model’s lift, all round a cycle', () => {
    const { rig, pose, session } = first;
    const axis = camHeight(def);
    for (let i = 0; i < 36; i++) {
      const theta = -2 * Math.PI + (i / 36) * 4 * Math.PI;
      const wanted = camAngle(def, theta);
      expect(Math.cos(camAngleAt(def, theta) - wanted)).toBeCloseTo(1, 9);
      pose({ reading: { theta, camAngle: wanted, travel: 0, turn: 0, fork: 0, rope: 0, throttle: 0 } });
      const lobe = dimsOf(def, 'camshaft')('lobeWidth') / 2;
      const lift = highest(rig.piece('camshaft'), lobe) - axis - def.cam.baseRadius;
      expect(Math.abs(lift - camLift(def, theta))).toBeLessThan(4e-5);
    }
    expect(session.sim().step).toBe(0);
  });

  it('keeps its line of contact within the cup’s nose (a flat follower’s offset is the slope of the lift)', () => {
    // derived: contact offset s' of a flat follower; physics of cams, any textbook
    const offsets = Array.from({ length: 200 }, (_, i) =>
      Math.abs(camRise(solidDefinition, -1.1 + i * 0.011).slope),
    );
    expect(Math.max(...offsets)).toBeLessThan(dimsOf(def, 'cup')('noseRadius'));
  });
});

describe('the plunger that is drawn', () => {
  it('closes the drawn port at the model’s port lift', () => {
    const barrel = dimsOf(def, 'barrel');
    const upperEdge = barrel('portCentre') + barrel('portDiameter') / 2;
    expect(upperEdge - dimsOf(def, 'plunger')('to')).toBeCloseTo(def.pump.portLift, 9);
  });

  it('stays under the valve at the top stop', () => {
    const top = dimsOf(def, 'plunger')('to') + def.pump.topStop;
    expect(top).toBeLessThan(dimsOf(def, 'barrel')('to'));
  });
});

describe('the springs that are drawn', () => {
  const spec = dimsOf(def, 'returnSpring');

  it('have the model’s wire, diameter and working coils (two more are closed ends)', () => {
    expect(spec('wire')).toBe(def.spring.wire);
    expect(spec('meanDiameter')).toBe(def.spring.meanDiameter);
    expect(spec('coils')).toBe(def.spring.activeCoils + 2);
  });

  it('are as long as they are told to be', () => {
    const spring = coil({ wire: spec('wire'), mean: spec('meanDiameter'), coils: spec('coils') }, 0.04);
    for (const length of [0.043, 0.034, 0.028]) {
      spring.setLength(length);
      spring.geometry.computeBoundingBox();
      const box = spring.geometry.boundingBox ?? new Box3();
      expect(box.max.y - box.min.y).toBeCloseTo(length, 4);
    }
  });

  it('are cut at the axis: the back half behind it, and two faces of the wire’s own section for every coil', () => {
    const wire = spec('wire');
    const spring = coil({ wire, mean: spec('meanDiameter'), coils: spec('coils') }, 0.04);
    spring.setLength(0.03);
    const half = spring.half();
    const used = Array.from(half.getIndex()?.array ?? [], (k) => half.getAttribute('position').getZ(k));
    expect(Math.max(...used)).toBeLessThan(1e-6);
    expect(Math.min(...used)).toBeCloseTo(-(spec('meanDiameter') + wire) / 2, 5);
    const place = spring.cut.getAttribute('position');
    const index = Array.from(spring.cut.getIndex()?.array ?? []);
    let area = 0;
    for (let t = 0; t < index.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => new Vector3().fromBufferAttribute(place, index[t + k] ?? 0));
      if (a === undefined || b === undefined || c === undefined) throw new Error('a face lacks a corner');
      const across = b.sub(a).cross(c.sub(a));
      expect(across.z).toBeGreaterThanOrEqual(0);
      area += across.z / 2;
    }
    // An eight-sided wire: area of a regular octagon in a circle of the wire's diameter (plane geometry); less what
    // is ground off the closed ends.
    const octagon = 2 * Math.SQRT2 * (wire / 2) ** 2;
    expect(area / (2 * spec('coils') * octagon)).toBeGreaterThan(0.93);
    expect(area / (2 * spec('coils') * octagon)).toBeLessThanOrEqual(1 + 1e-6);
  });

  it('are preloaded by the model’s force when fitted and do not go solid at the top stop', () => {
    const { wire, meanDiameter, activeCoils, shearModulus, preload } = def.spring;
    const rate = (shearModulus * wire ** 4) / (8 * meanDiameter ** 3 * activeCoils);
    expect((springFree(def) - springRoom(def)) * rate).toBeCloseTo(preload, 6);
    // solid length of a squared and ground spring d (Na + 2), Shigley, Mechanical Engineering Design (from memory)
    expect(springRoom(def) - def.pump.topStop).toBeGreaterThan(wire * (activeCoils + 2));
  });
});

describe('the fits of the pump that is drawn', () => {
  const d = (part: string, key: string): number => dimsOf(def, part)(key);
  const inside: readonly (readonly [string, number, number])[] = [
    ['cup in its bore', d('cup', 'radius'), d('body', 'bore')],
    ['cup’s nose through the ring', d('cup', 'noseRadius'), d('retainer', 'innerRadius')],
    ['ring within the pilot', d('retainer', 'outerRadius'), d('body', 'pilotRadius')],
    ['spring in its bore', (def.spring.meanDiameter + def.spring.wire) / 2, d('body', 'springBore')],
    ['barrel in the spring', d('barrel', 'lowerRadius'), (def.spring.meanDiameter - def.spring.wire) / 2],
    ['spring plate in the spring’s bore', d('springPlate', 'radius'), d('body', 'springBore')],
    ['plunger’s collar under the plate', d('springPlate', 'hole'), d('plunger', 'collarRadius')],
    ['stem through the plate', def.pump.plungerDiameter / 2, d('springPlate', 'hole')],
    ['barrel’s collar in its bore', d('barrel', 'collarRadius'), d('body', 'barrelBore')],
    ['barrel through the thread', d('barrel', 'collarRadius'), d('holder', 'threadRadius') - 0.00075],
    ['valve seat through the thread', d('deliveryValve', 'seatOuterRadius'), d('body', 'barrelBore')],
    [
      'valve spring in the holder',
      (d('valveSpring', 'meanDiameter') + d('valveSpring', 'wire')) / 2,
      d('holder', 'boreRadius'),
    ],
    ['pilot in the deck', d('body', 'pilotRadius'), d('body', 'pilotRadius') + 0.00015],
    ['stud in the flange’s slot', d('stud', 'radius'), d('body', 'slotWidth') / 2],
    ['pin in the fork’s slot', d('pin', 'diameter') / 2, def.pump.slotWidth / 2],
  ];
  it.each(inside)('lets the %s', (_, inner, outer) => {
    expect(inner).toBeLessThan(outer);
  });

  it('keeps plate and barrel apart at the top stop', () => {
    const plate = d('springPlate', 'from') + d('springPlate', 'thickness') + def.pump.topStop;
    expect(plate).toBeLessThan(d('barrel', 'from'));
  });

  it('keeps the pin above the cup’s rim and within the fork’s slot over the whole travel', () => {
    const rim = d('cup', 'height') - d('cup', 'proud');
    const pinLow = d('pin', 'height') - d('pin', 'diameter') / 2;
    expect(pinLow).toBeGreaterThan(rim);
    expect(pinLow).toBeGreaterThan(d('fork', 'slotBottom'));
    expect(d('pin', 'height') + def.pump.topStop).toBeLessThan(d('fork', 'tip'));
  });

  it('reaches through the fork with the pin but not through the window', () => {
    const tip = d('pin', 'root') + d('pin', 'length');
    expect(tip).toBeGreaterThan(d('fork', 'radius'));
    expect(tip).toBeLessThan(d('body', 'windowFace'));
    expect(d('plunger', 'collarRadius') + d('pin', 'arm')).toBeCloseTo(d('fork', 'radius'), 9);
  });
});

describe('what lies in the tray', () => {
  it('lies on its floor, the plunger’s pin too, and not in it; the pipe lies on the bench', () => {
    const { rig, pose, session } = first;
    const sim = session.sim();
    const parts = { ...sim.assembly.parts };
    parts.pipe = 'tray';
    const out = ['plunger', 'cup', 'retainer', 'returnSpring', 'holder', 'valve', 'valveSpring'] as const;
    for (const id of out) parts[id] = 'tray';
    pose({ sim: { ...sim, assembly: { ...sim.assembly, parts } } });
    const line = new Box3().setFromObject(rig.piece('pipe').whole, true);
    expect(line.min.y).toBeGreaterThan(0);
    expect(line.min.y).toBeLessThan(0.006);
    const floor = rig.piece('tray').group.position.y + 0.0015;
    for (const id of ['pin', 'springPlate', 'valveSeat', ...out]) {
      const { min } = new Box3().setFromObject(rig.piece(id).whole, true);
      expect.soft(min.y, id).toBeGreaterThan(floor);
      expect.soft(min.y, id).toBeLessThan(floor + (id === 'pin' ? 0.012 : 0.0035));
    }
    pose();
  });
});

describe('a pump drawn apart on the engine', () => {
  it('passes before the tank, which stays where it is', () => {
    const { rig, pose } = first;
    pose({ apart: 1 });
    const boxOf = (id: string): Box3 => new Box3().setFromObject(rig.piece(id).whole, true);
    const tank = boxOf('tank');
    for (const id of ['tank', 'cap', 'sight', 'level']) expect(rig.piece(id).group.visible, id).toBe(true);
    for (const id of ['holder', 'valveSpring', 'valve', 'valveSeat', 'barrel', 'pumpBody', 'bleedScrew']) {
      const part = boxOf(id);
      const clear = Math.max(part.min.z - tank.max.z, tank.min.y - part.max.y, tank.min.x - part.max.x);
      expect.soft(clear, id).toBeGreaterThan(5e-4);
    }
    pose();
  });
});

describe('the pose of the pump', () => {
  it('puts cup, plunger, plate and spring where the model has the plunger', () => {
    const at = first;
    at.pose();
    const { travel } = at.session.sim().pump;
    expect(travel).toBeGreaterThan(0.005);
    const body = at.rig.piece('pumpBody').group.position.y;
    for (const id of ['cup', 'plunger', 'springPlate']) {
      expect(at.rig.piece(id).group.position.y - body).toBeCloseTo(travel, 9);
    }
    const spring = new Box3().setFromObject(at.rig.piece('returnSpring').whole, true);
    expect(spring.max.y - body).toBeCloseTo(dimsOf(def, 'body')('ledgeFrom'), 4);
    expect(spring.max.y - spring.min.y).toBeCloseTo(springRoom(def) - travel, 4);
  });

  it('has a free pin in the fork’s slot at every throttle', () => {
    const at = stage([]);
    for (const to of [0, 0.35, 0.7, 1]) {
      at.session.do({ do: 'moveThrottle', to });
      at.pose();
      const pin = at.rig.piece('pin').group.localToWorld(new Vector3(0, 0, dimsOf(def, 'fork')('radius')));
      const inFork = at.rig.piece('fork').group.worldToLocal(pin);
      const play = (def.pump.slotWidth - dimsOf(def, 'pin')('diameter')) / 2;
      expect(Math.abs(inFork.x)).toBeLessThan(play + 2e-4);
    }
  });
});
