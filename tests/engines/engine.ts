// A page in each of three engines, driven alike: what a person does is written once, in errands.test.ts.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, globSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import puppeteer from 'puppeteer-core';
import { Builder, By, until } from 'selenium-webdriver';
import { chromiumOptions } from '../../scripts/machine.mjs';

/** What is found is found by XPath, and waited for until it can be seen. */
export interface Engine {
  readonly name: string;
  go(address: string): Promise<void>;
  click(xpath: string): Promise<void>;
  /** Characters and `ArrowRight` and the like, into what has been found. */
  keys(xpath: string, ...keys: readonly string[]): Promise<void>;
  text(xpath: string): Promise<string>;
  /** The value of an expression in the page, a promise's too. */
  evaluate(expression: string): Promise<unknown>;
  /** The page as a PDF, A4, once it shows what the selector finds. */
  print(selector: string): Promise<Uint8Array>;
  /** Writes a picture of the screen below reports/engines. */
  picture(name: string): Promise<void>;
  close(): Promise<void>;
}

const PHONE = { width: 390, height: 780 };
const PATIENCE = 30_000;
const PICTURES = 'reports/engines';

function keep(name: string, picture: Uint8Array | string): void {
  mkdirSync(PICTURES, { recursive: true });
  writeFileSync(`${PICTURES}/${name}.png`, picture, typeof picture === 'string' ? 'base64' : undefined);
}

const isNamed = (key: string): boolean => /^Arrow\w+$|^Enter$/.test(key);

async function chromiumEngine(): Promise<Engine> {
  const browser = await chromium.launch(chromiumOptions());
  const context = await browser.newContext({ viewport: PHONE, serviceWorkers: 'allow' });
  context.setDefaultTimeout(PATIENCE);
  const page = await context.newPage();
  const at = (xpath: string) => page.locator(`xpath=${xpath}`).first();
  return {
    name: 'Chromium',
    go: async (address) => void (await page.goto(address)),
    click: (xpath) => at(xpath).click(),
    keys: async (xpath, ...keys) => {
      await at(xpath).focus();
      for (const key of keys) await (isNamed(key) ? page.keyboard.press(key) : page.keyboard.type(key));
    },
    text: async (xpath) => {
      await at(xpath).waitFor();
      return (await at(xpath).textContent()) ?? '';
    },
    evaluate: (expression) => page.evaluate(expression),
    print: async (selector) => {
      await page.locator(selector).first().waitFor({ state: 'attached' });
      return page.pdf({ format: 'A4' });
    },
    picture: async (name) => keep(`${name}-chromium`, await page.screenshot()),
    close: () => browser.close(),
  };
}

async function firefoxEngine(executablePath: string): Promise<Engine> {
  const browser = await puppeteer.launch({ browser: 'firefox', executablePath, headless: true, timeout: 60_000 });
  const page = await browser.newPage();
  await page.setViewport(PHONE);
  page.setDefaultTimeout(PATIENCE);
  const at = async (xpath: string) => {
    const found = await page.waitForSelector(`::-p-xpath(${xpath})`, { visible: true });
    if (found === null) throw new Error(`${xpath} was not found`);
    return found;
  };
  return {
    name: 'Firefox',
    go: async (address) => void (await page.goto(address)),
    click: async (xpath) => (await at(xpath)).click(),
    keys: async (xpath, ...keys) => {
      const one = await at(xpath);
      await one.focus();
      for (const key of keys) {
        if (key === 'ArrowRight' || key === 'ArrowLeft' || key === 'Enter') await page.keyboard.press(key);
        else await page.keyboard.type(key);
      }
    },
    text: async (xpath) => (await at(xpath)).evaluate(({ textContent }) => textContent ?? ''),
    evaluate: (expression) => page.evaluate(expression),
    print: async (selector) => {
      await page.waitForSelector(selector);
      return page.pdf({ format: 'A4' });
    },
    picture: async (name) => keep(`${name}-firefox`, await page.screenshot()),
    close: () => browser.close(),
  };
}

/** A port that nobody listens on. */
export const freePort = (): Promise<number> =>
  new Promise((done, fail) => {
    const server = createServer().once('error', fail);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => done(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });

/** Ends a process and all that it has started. */
function end({ pid }: ChildProcess): void {
  try {
    if (pid !== undefined) process.kill(-pid, 'SIGKILL');
  } catch {
    // It has ended by itself.
  }
}

/** The driver has no command for it (WebDriver, "Print Page"): the engine itself prints, in a window of its own. */
async function printedByWebKit(address: string, selector: string): Promise<Uint8Array> {
  mkdirSync(PICTURES, { recursive: true });
  const file = join(process.cwd(), PICTURES, 'answer-webkit.pdf');
  // The interpreter of the system, which has the bindings.
  const line = ['-a', '/usr/bin/python3', join(import.meta.dirname, 'webkit-print.py'), address, file, selector];
  const printing = spawn('xvfb-run', line, { detached: true, stdio: ['ignore', 'ignore', 'inherit'] });
  const late = setTimeout(() => end(printing), PATIENCE);
  const code = await new Promise((done) => printing.once('exit', done));
  clearTimeout(late);
  if (code !== 0) throw new Error(`WebKit did not print ${address}`);
  return readFileSync(file);
}

const KEYS: Readonly<Record<string, string>> = { ArrowRight: '\uE014', ArrowLeft: '\uE012', Enter: '\uE007' };

async function webKitEngine(binary: string): Promise<Engine> {
  const port = await freePort();
  // A window of this engine needs a screen, if only one that nobody sees.
  const driver = spawn('xvfb-run', ['-a', 'WebKitWebDriver', `--port=${port}`], { detached: true, stdio: 'ignore' });
  const capabilities = {
    browserName: 'MiniBrowser',
    'webkitgtk:browserOptions': { binary, args: ['--automation'] },
  };
  const begin = async (patience: number) => {
    try {
      return await new Builder().usingServer(`http://127.0.0.1:${port}`).withCapabilities(capabilities).build();
    } catch (error) {
      if (patience <= 0) throw error;
      await new Promise((done) => setTimeout(done, 500));
      return begin(patience - 500);
    }
  };
  const page = await begin(15_000).catch((error: unknown) => {
    end(driver);
    throw error;
  });
  const at = async (xpath: string) => {
    const found = await page.wait(until.elementLocated(By.xpath(xpath)), PATIENCE);
    return page.wait(until.elementIsVisible(found), PATIENCE);
  };
  await page.manage().setTimeouts({ script: PATIENCE });
  await page.manage().window().setRect(PHONE);
  return {
    name: 'WebKit',
    go: (address) => page.get(address),
    click: async (xpath) => {
      const one = await at(xpath);
      await page.executeScript('arguments[0].scrollIntoView({ block: "center" })', one);
      await one.click();
    },
    keys: async (xpath, ...keys) => (await at(xpath)).sendKeys(...keys.map((key) => KEYS[key] ?? key)),
    text: async (xpath) => page.executeScript('return arguments[0].textContent', await at(xpath)),
    evaluate: (expression) =>
      page.executeAsyncScript(`const done = arguments[0]; Promise.resolve(${expression}).then(done)`),
    print: async (selector) => printedByWebKit(await page.getCurrentUrl(), selector),
    picture: async (name) => keep(`${name}-webkit`, await page.takeScreenshot()),
    close: async () => {
      await page.quit().catch(() => undefined);
      end(driver);
    },
  };
}

export const FIREFOX = ['/usr/bin/firefox-esr', '/usr/bin/firefox'].find((path) => existsSync(path));
export const WEBKIT = globSync('/usr/lib/*/webkit2gtk-4.*/MiniBrowser')[0];

/** The engines of this machine; what cannot be started says so in its test. */
export const ENGINES: readonly { readonly name: string; readonly start: () => Promise<Engine> }[] = [
  { name: 'Chromium', start: chromiumEngine },
  { name: 'Firefox ESR', start: () => firefoxEngine(FIREFOX ?? 'firefox-esr') },
  { name: 'WebKitGTK', start: () => webKitEngine(WEBKIT ?? 'MiniBrowser') },
];
