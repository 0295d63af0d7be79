import fc from 'fast-check';

// Repeatable by default, so that the same tree always gives the same result; FREESTROKE_SEED tries others.
fc.configureGlobal({ seed: Number(process.env.FREESTROKE_SEED ?? 20_270_401) });
