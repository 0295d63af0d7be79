/** Name of the element by which the page of a package says which work it holds. */
export const WORK_META = 'freestroke-work';
