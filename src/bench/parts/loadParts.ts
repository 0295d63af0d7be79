import { type Parts, readParts } from './readParts.ts';

/** Fetches the baked parts that lie beside the page; fails with a sentence when they cannot be had. */
export async function loadParts(): Promise<Parts> {
  const address = `${import.meta.env.BASE_URL}parts/pump.glb`;
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`The parts of the pump could not be loaded (${answer.status}).`);
  return readParts(await answer.arrayBuffer());
}
