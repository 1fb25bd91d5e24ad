// @ts-check
import { defineConfig } from '@playwright/test';

const port = Number(process.env.STILLROOM_PORT ?? 8412);
const address = `http://127.0.0.1:${port}/`;

export default defineConfig({
  testDir: '.',
  testMatch: '*.spec.js',
  outputDir: 'test-results',
  // As many as a small machine has cores: nothing here is timed.
  workers: 2,
  retries: 0,
  forbidOnly: Boolean(process.env.CI),
  timeout: 45_000,
  expect: { timeout: 10_000 },
  reporter: 'list',
  use: {
    baseURL: address,
    viewport: { width: 390, height: 844 },
    isMobile: true,
    hasTouch: true,
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    serviceWorkers: 'allow',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: process.env.CHROME_PATH ?? '/usr/bin/chromium',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  projects: [
    { name: 'phone' },
    // Tests whose title ends in @desk run on a large screen, too.
    { name: 'desk', grep: /@desk/, use: { viewport: { width: 1280, height: 800 }, isMobile: false, hasTouch: false } },
  ],
  webServer: {
    command: `${process.env.STILLROOM_XTASK ? `"${process.env.STILLROOM_XTASK}"` : 'cargo xtask'} serve --no-build --port ${port}`,
    url: address,
    cwd: '../..',
    reuseExistingServer: false,
    timeout: 60_000,
  },
});
