import type { BufferGeometry } from 'three';

/** One part as drawn: whole, and cut through its axis (the back half, with its cut faces) where a section shows it cut. */
export type PartForm = { readonly whole: BufferGeometry; readonly half?: BufferGeometry };
