import type { BufferGeometry } from 'three';

/**
 * One part as drawn: whole, and cut through its axis where a section shows it cut: the back half with its own
 * surfaces, and the flat faces that the cut made.
 */
export type PartForm = {
  readonly whole: BufferGeometry;
  readonly half?: BufferGeometry;
  readonly cut?: BufferGeometry;
};
