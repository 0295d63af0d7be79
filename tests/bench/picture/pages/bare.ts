import {
  Color,
  DirectionalLight,
  HemisphereLight,
  Mesh,
  MeshLambertMaterial,
  MeshStandardMaterial,
  PerspectiveCamera,
  PlaneGeometry,
  Scene,
  SphereGeometry,
  WebGLRenderer,
} from 'three';

/** What the bare scene is to have in common with the bench. */
export type Like = {
  /** CSS pixels of the canvas, and pixels of the drawing per CSS pixel. */
  readonly width: number;
  readonly height: number;
  readonly ratio: number;
  readonly triangles: number;
  readonly calls: number;
  /** Lambert: the cheapest lit material of three; standard: the usual one. */
  readonly material: 'lambert' | 'standard';
};

/** Builds the scene; returns what draws it for so many ms while the camera walks round, and tells of frames a second. */
function bare(like: Like): { run: (ms: number) => Promise<number>; triangles: number; calls: number } {
  document.querySelector('canvas')?.remove();
  const gl = new WebGLRenderer({ antialias: false, alpha: false, stencil: false });
  gl.setPixelRatio(like.ratio);
  gl.setSize(like.width, like.height);
  gl.shadowMap.enabled = true;
  gl.shadowMap.autoUpdate = false;
  document.body.append(gl.domElement);
  const scene = filled(like);
  const camera = new PerspectiveCamera(30, like.width / like.height, 0.02, 12);
  let turn = 0;
  const draw = (): void => {
    turn += 0.01;
    camera.position.set(1.9 * Math.sin(turn), 0.8, 1.9 * Math.cos(turn));
    camera.lookAt(0, 0.15, 0);
    gl.render(scene, camera);
  };
  gl.shadowMap.needsUpdate = true;
  draw();
  const run = (ms: number): Promise<number> =>
    new Promise((resolve) => {
      const begun = performance.now();
      let drawn = 0;
      const step = (): void => {
        draw();
        drawn += 1;
        const past = performance.now() - begun;
        if (past < ms) requestAnimationFrame(step);
        else resolve((drawn * 1000) / past);
      };
      requestAnimationFrame(step);
    });
  draw();
  return { run, triangles: gl.info.render.triangles, calls: gl.info.render.calls };
}

/** A window's light with its shadow, a fill, a table and a wall, and balls with the rest of the triangles. */
function filled({ triangles, calls, material }: Like): Scene {
  const paint = (color: number) =>
    material === 'lambert' ? new MeshLambertMaterial({ color }) : new MeshStandardMaterial({ color });
  const scene = new Scene();
  scene.background = new Color(0xb9b2a6);
  const sun = new DirectionalLight(0xffffff, 3);
  sun.position.set(-2.3, 1.95, 0.95);
  sun.castShadow = true;
  sun.shadow.mapSize.set(1024, 1024);
  scene.add(sun, new HemisphereLight(0xccd8e8, 0x806040, 1));
  const table = new Mesh(new PlaneGeometry(3, 3), paint(0xad8058));
  table.rotation.x = -Math.PI / 2;
  const wall = new Mesh(new PlaneGeometry(12, 6), paint(0xd6cfc2));
  wall.position.z = -1.5;
  scene.add(table, wall);
  const balls = Math.max(1, calls - 2);
  const each = Math.max(8, Math.round((triangles - 4) / balls));
  // a ball of w x h faces has 2 w (h - 1) triangles
  const h = Math.max(3, Math.round(Math.sqrt(each / 4)) + 1);
  const ball = new SphereGeometry(0.075, Math.max(3, Math.round(each / (2 * (h - 1)))), h);
  const paints = [0x4f5e56, 0xa9aaa8, 0x6c6d6e, 0xc9a25a].map(paint);
  for (let i = 0; i < balls; i += 1) {
    const mesh = new Mesh(ball, paints[i % paints.length]);
    mesh.position.set((((i * 7) % 11) - 5) * 0.085, 0.08 + (i % 5) * 0.07, (((i * 5) % 9) - 4) * 0.07);
    mesh.castShadow = true;
    scene.add(mesh);
  }
  scene.traverse((object) => {
    object.receiveShadow = true;
  });
  return scene;
}

Object.assign(globalThis, { bare });
