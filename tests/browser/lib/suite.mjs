// One engine, many small tests: each gets tabs of its own and (through a server of its own port) an
// origin, hence a database, of its own.

import { after, afterEach, before, describe, test } from "node:test";
import { ENGINES, launch } from "./browser.mjs";
import { serve } from "./server.mjs";

/** Runs `body({engine, browser, check})` for every engine; `check(name, act)` is one test, `act` gets
 *  `{browser, serve}`, and any error a page showed unasked fails it. */
export function in_every_engine(title, body, options = {}) {
  for (const engine of ENGINES) {
    describe(`${title} in ${engine}`, () => {
      let browser;
      let servers = [];
      before(async () => { browser = await launch(engine, options); });
      after(() => browser?.close());
      afterEach(async () => {
        await browser.clear();
        await Promise.all(servers.splice(0).map((server) => server.stop()));
      });
      const check = (name, act) => test(name, { timeout: 60_000 }, async () => {
        await act({
          browser,
          engine,
          serve: async (...given) => {
            const server = await serve(...given);
            servers.push(server);
            return server;
          },
        });
        browser.quiet();
      });
      body({ engine, check });
    });
  }
}
