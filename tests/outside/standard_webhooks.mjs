// The reference library of Standard Webhooks, asked from tests/outside/standard_webhooks_test.c.
//   node standard_webhooks.mjs sign     prints requests that the library signed, one JSON a line
//   node standard_webhooks.mjs verify   reads such lines, prints "good" or "bad" for each
import { randomBytes } from "node:crypto";
import { createInterface } from "node:readline";
import { Webhook } from "standardwebhooks";

const bodies = [
  "", "{}", '{"test": 2432232314}', '{"text":"how long do I have?"}',
  '{"text":"¿cuántas horas me quedan? 🙂"}', '{"text":"a.b.c","id":"1.2"}', " \r\n\t{ } ",
  '{"text":"' + "x".repeat(20000) + '"}', "from=%2B12085550123&body=two+lights",
];

function sign() {
  for (const size of [24, 32, 64]) {
    const secret = "whsec_" + randomBytes(size).toString("base64");
    for (const [index, body] of bodies.entries()) {
      const id = `msg_${size}_${index}`;
      const now = new Date();
      console.log(JSON.stringify({
        secret, id, body,
        timestamp: String(Math.floor(now.getTime() / 1000)),
        signature: new Webhook(secret).sign(id, now, body),
      }));
    }
  }
}

async function verify() {
  for await (const line of createInterface({ input: process.stdin })) {
    const { secret, id, timestamp, signature, body } = JSON.parse(line);
    const headers = {
      "webhook-id": id, "webhook-timestamp": timestamp, "webhook-signature": signature,
    };
    try {
      new Webhook(secret).verify(body, headers, { jsonParse: false });
      console.log("good");
    } catch {
      console.log("bad");
    }
  }
}

await (process.argv[2] === "sign" ? sign() : verify());
