import { ensureChromium } from './chromium.ts';

// First step of `npm test`: a missing browser should be known before minutes are spent on other tests.
try {
  console.log(`Browser for the tests: ${ensureChromium()}`);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}
