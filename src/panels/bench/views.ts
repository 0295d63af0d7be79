/** Viewpoints of the bench, by the names that the bench gives them. */
export const viewNames: Readonly<Record<string, string>> = {
  set: 'Whole set',
  pump: 'Pump',
  window: 'Inspection window',
  injector: 'Injector',
  fuel: 'Fuel side',
  bench: 'Bench top',
  camEnd: 'Cam end',
  outletEnd: 'Outlet end',
  section: 'Section',
  apart: 'Pulled apart',
};
