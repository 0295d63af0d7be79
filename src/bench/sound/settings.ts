/** What the user has chosen about sound, its words and vibration. */
export type SoundSettings = { readonly sound: boolean; readonly captions: boolean; readonly jolts: boolean };

const KEY = 'freestroke-sound';
const first: SoundSettings = { sound: true, captions: true, jolts: true };

/** The choices kept on this device, or the first ones; vibration starts off where less motion is asked for. */
export function readSettings(): SoundSettings {
  const quiet = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  const start = { ...first, jolts: !quiet };
  try {
    const kept: unknown = JSON.parse(window.localStorage.getItem(KEY) ?? 'null');
    if (typeof kept !== 'object' || kept === null) return start;
    const flag = (name: keyof SoundSettings): boolean => {
      const value: unknown = Object.entries(kept).find(([key]) => key === name)?.[1];
      return typeof value === 'boolean' ? value : start[name];
    };
    return { sound: flag('sound'), captions: flag('captions'), jolts: flag('jolts') };
  } catch {
    // Storage is shut or holds something else: the first choices do.
    return start;
  }
}

/** Keeps the choices on this device where it lets itself be written to. */
export function keepSettings(settings: SoundSettings): void {
  try {
    window.localStorage.setItem(KEY, JSON.stringify(settings));
  } catch {
    // Without storage they hold until the page is left.
  }
}
