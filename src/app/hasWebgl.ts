/** Whether this browser can draw in 3D at all; asked before the large libraries are fetched. */
export function hasWebgl(): boolean {
  const context = document.createElement('canvas').getContext('webgl2');
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return context !== null;
}
