import { describe, expect, it } from 'vitest';
import { shadeSurfaces, sharedUniforms, surfaceMaterial } from '../../src/bench/look/surface.ts';

describe('shading of surfaces', () => {
  const shared = sharedUniforms();
  const part = surfaceMaterial(shared, { value: 0 });
  const ground = surfaceMaterial(shared, { value: 0 }, 'plain');

  it('leaves shadows sharp on what they fall on, however poorly the parts are shaded', () => {
    // A contact shadow tells whether a part rests or floats: common practice, no source.
    shadeSurfaces([part, ground], 'bare');
    expect(part.defines).toHaveProperty('BARE');
    expect(ground.defines).not.toHaveProperty('BARE');
    expect(ground.defines).toHaveProperty('PLAIN');
  });

  it('is the same for all surfaces at every other step', () => {
    for (const shade of ['plain', 'smooth', 'full'] as const) {
      shadeSurfaces([part, ground], shade);
      expect(ground.defines).toEqual(part.defines);
    }
  });

  it('compiles a shader anew only where the shading changes', () => {
    shadeSurfaces([part], 'full');
    const before = part.version;
    shadeSurfaces([part], 'full');
    expect(part.version).toBe(before);
    shadeSurfaces([part], 'bare');
    expect(part.version).toBe(before + 1);
  });
});
