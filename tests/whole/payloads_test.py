"""The gateways described in config/gateways, each with what such a gateway posts.

The files are used as they stand, but for where our texts are sent. For each: a text of that shape
is taken, read right and answered by a request of that shape; a repeat is known; without proof it
is refused; and the delivery report finds the text that it is about.
"""
import base64
import hashlib
import hmac
import json
import urllib.parse

import daemon
import stand_ins
from daemon import BERT, OFFICE, WholeTest
from stand_in_gateway import request, rfc3339, signed_headers

SENT_UTC_S = daemon.EVENING_UTC_S - 7
BEGAN = rfc3339(SENT_UTC_S)
JSON, FORM = "application/json", "application/x-www-form-urlencoded"


def basic(gateway):
    return "Basic " + base64.b64encode(gateway["authentication"]["secrets"][0].encode()).decode()


def hmac_of(gateway, signed):
    return hmac.new(gateway["authentication"]["secrets"][0].encode(), signed, hashlib.sha256)


class Payloads(WholeTest):
    # ---- one gateway

    def begin(self, name):
        self.name = name
        self.described = json.loads(
            (daemon.TOP / "config" / "gateways" / f"{name}.json").read_text())
        self.sink = stand_ins.Listener()
        self.addCleanup(self.sink.down)
        gateway = daemon.merged(self.described, {"send": {
            "url": self.described["send"]["url"].replace("https://gateway.example",
                                                         self.sink.url)}})
        self.start({"gateways": {"valley": None, name: gateway}, "reply_gateway": name})

    def post(self, kind, content_type, body, headers):
        return request("127.0.0.1", self.daemon.port, "POST", f"/{kind}/{self.name}", body,
                       {"Content-Type": content_type, **headers})

    def taken(self, post, body, proof, gateway_id, recipient=OFFICE, attachments=0, wrong=None):
        """`post(body, headers)`; `proof(body)` makes the headers that prove it."""
        self.assertEqual(post(body, wrong or {}).status, 401)
        self.assertEqual(post(body, proof(body)).status, 200, self.daemon.log())
        self.assertEqual(post(body, proof(body)).status, 200)  # a repeat
        self.assertEqual(
            self.rows("SELECT gateway, gateway_id, sender, recipient, body, attachments, sent_utc_s"
                      " FROM text"),
            [(self.name, gateway_id, BERT, recipient, "When is it due?", attachments, SENT_UTC_S)])
        self.wait(lambda: self.sink.requests, "the answer is sent")
        sent = self.sink.requests[0]
        self.daemon.log_until("text-accepted")
        return sent

    def reported(self, post, body, proof):
        self.assertEqual(post(body, {}).status, 401)
        self.assertEqual(post(body, proof(body)).status, 200)
        self.assertEqual(self.count("SELECT count(*) FROM outbox_event WHERE event = 'delivered'"),
                         1, self.daemon.log())

    def key(self):
        return self.rows("SELECT key FROM outbox")[0][0]

    def is_answer(self, words):
        self.assertIn("Feb 18", words)

    # ---- seven of them

    def test_oma_short_messaging(self):
        self.begin("oma-short-messaging")

        def proof(_):
            return {"Authorization": basic(self.described)}

        def messages(body, headers):
            return self.post("messages", JSON, body, headers)

        body = json.dumps({"inboundSMSMessageNotification": {
            "callbackData": "rental-line",
            "inboundSMSMessage": {"dateTime": BEGAN, "destinationAddress": "tel:" + OFFICE,
                                  "senderAddress": "tel:" + BERT, "messageId": "msg-12345",
                                  "message": "When is it due?"}}}).encode()
        sent = self.taken(messages, body, proof, "msg-12345")
        self.assertEqual(sent.path, "/smsmessaging/v1/outbound/tel%3A%2B12085550100/requests")
        asked = sent.json()["outboundSMSMessageRequest"]
        self.assertNotIn("#", sent.body.decode(), "remarks stay at home")
        self.assertEqual((asked["address"], asked["senderAddress"]), (["tel:" + BERT],
                                                                      "tel:" + OFFICE))
        self.is_answer(asked["outboundSMSTextMessage"]["message"])
        self.assertEqual(asked["receiptRequest"]["callbackData"], self.key())
        report = json.dumps({"deliveryInfoNotification": {
            "callbackData": asked["receiptRequest"]["callbackData"],
            "deliveryInfo": {"address": "tel:" + BERT,
                             "deliveryStatus": "DeliveredToTerminal"}}}).encode()
        self.reported(lambda b, h: self.post("deliveries", JSON, b, h), report, proof)

    def test_oma_short_messaging_with_what_gateways_leave_out(self):
        self.begin("oma-short-messaging")
        body = json.dumps({"inboundSMSMessageNotification": {
            "inboundSMSMessage": {"dateTime": "2026-02-13T18:59:53-07:00",
                                  "destinationAddress": OFFICE, "senderAddress": "tel:" + BERT,
                                  "message": "When is it due?"}}}).encode()
        self.taken(lambda b, h: self.post("messages", JSON, b, h), body,
                   lambda _: {"Authorization": basic(self.described)}, None)

    def test_a_form_signed_over_url_and_sorted_fields(self):
        self.begin("signed-form")

        def poster(kind):
            def post(body, headers):
                return self.post(kind, FORM, body, headers)
            return post

        def signer(kind):
            def proof(body):
                pairs = sorted(urllib.parse.parse_qsl(body.decode(), keep_blank_values=True))
                signed = f"http://127.0.0.1:{self.daemon.port}/{kind}/{self.name}" + "".join(
                    name + value for name, value in pairs)
                made = hmac_of(self.described, signed.encode()).digest()
                return {"X-Form-Signature": base64.b64encode(made).decode()}
            return proof

        body = urllib.parse.urlencode({
            "words": "When is it due?", "sender_number": BERT, "our_number": OFFICE,
            "reference": "f&1", "sent_at": BEGAN, "picture_count": "2"}).encode()
        sent = self.taken(poster("messages"), body, signer("messages"), "f&1", attachments=2,
                          wrong={"X-Form-Signature": "A" * 43 + "="})
        fields = dict(urllib.parse.parse_qsl(sent.body.decode()))
        self.assertEqual((fields["to_number"], fields["our_number"]), (BERT, OFFICE))
        self.is_answer(fields["words"])

    def test_the_report_of_a_signed_form(self):
        self.begin("signed-form")
        self.sink.answer = {"reference": "out-7"}
        self.send_as_bert_in_the_store()
        body = urllib.parse.urlencode({"reference": "out-7", "outcome": "on-handset"}).encode()

        def proof(raw):
            pairs = sorted(urllib.parse.parse_qsl(raw.decode()))
            signed = f"http://127.0.0.1:{self.daemon.port}/deliveries/{self.name}" + "".join(
                name + value for name, value in pairs)
            return {"X-Form-Signature": base64.b64encode(
                hmac_of(self.described, signed.encode()).digest()).decode()}

        self.reported(lambda b, h: self.post("deliveries", FORM, b, h), body, proof)

    def send_as_bert_in_the_store(self):
        """One text of Bert by the signed form, for tests of the report alone."""
        pairs = {"words": "When is it due?", "sender_number": BERT, "sent_at": BEGAN}
        signed = f"http://127.0.0.1:{self.daemon.port}/messages/{self.name}" + "".join(
            name + value for name, value in sorted(pairs.items()))
        answer = self.post("messages", FORM, urllib.parse.urlencode(pairs).encode(), {
            "X-Form-Signature": base64.b64encode(
                hmac_of(self.described, signed.encode()).digest()).decode()})
        self.assertEqual(answer.status, 200)
        self.daemon.log_until("text-accepted")

    def test_cloudevents(self):
        self.begin("cloudevents")
        self.sink.answer = {"data": {"message": "m-9"}}

        def post(kind):
            return lambda body, headers: self.post(kind, "application/cloudevents+json", body,
                                                   headers)

        def proof(_):
            return {"Authorization": "Bearer " + self.described["authentication"]["secrets"][0]}

        event = {"specversion": "1.0", "id": "e-1", "source": "https://gateway.example/line/1",
                 "type": "example.text.received", "time": BEGAN, "subject": None,
                 "datacontenttype": "application/json",
                 "data": {"from": BERT, "to": OFFICE, "text": "When is it due?"}}
        sent = self.taken(post("messages"), json.dumps(event).encode(), proof, "e-1")
        self.assertEqual(sent.headers["Content-Type"], "application/cloudevents+json")
        asked = sent.json()
        self.assertEqual((asked["specversion"], asked["id"], asked["data"]["to"]),
                         ("1.0", self.key(), BERT))
        self.is_answer(asked["data"]["text"])
        report = {**event, "id": "e-2", "type": "example.text.state",
                  "data": {"message": "m-9", "state": "delivered"}}
        self.reported(post("deliveries"), json.dumps(report).encode(), proof)

    def test_standard_webhooks(self):
        self.begin("standard-webhooks")

        def proof(body):
            return signed_headers(self.described["authentication"]["secrets"][0], "w-1",
                                  int(self.gateway.clock.now()), body)

        def post(kind):
            return lambda body, headers: self.post(kind, JSON, body, headers)

        body = json.dumps({"type": "text.received", "timestamp": BEGAN, "data": {
            "id": "t-1", "from": BERT, "to": OFFICE, "text": "When is it due?",
            "pictures": [{"url": "https://gateway.example/1.jpg"}]}}).encode()
        sent = self.taken(post("messages"), body, proof, "t-1", attachments=1)
        self.is_answer(sent.json()["text"])
        again = signed_headers(self.described["send"]["secret"], sent.headers["webhook-id"],
                               sent.headers["webhook-timestamp"], sent.body)
        self.assertEqual(sent.headers["webhook-signature"], again["webhook-signature"])
        report = json.dumps({"type": "text.state", "timestamp": BEGAN,
                             "data": {"id": "call-1", "state": "arrived"}}).encode()
        self.reported(post("deliveries"), report, proof)

    def test_a_list_of_one_with_numbers_as_numbers(self):
        self.begin("list-of-one")
        self.sink.answer = [{"number": 4711}]

        def post(kind):
            return lambda body, headers: self.post(kind, JSON, body,
                                                   {"X-Signed-At": "1771034400", **headers})

        def proof(body):
            return {"X-Body-Signature":
                    "sha256=" + hmac_of(self.described, b"1771034400." + body).hexdigest()}

        body = json.dumps([{"handset": int(BERT[1:]), "line": int(OFFICE[1:]), "number": 815,
                            "moment": SENT_UTC_S * 1000 + 250,
                            "content": {"words": "When is it due?"}}]).encode()
        sent = self.taken(post("messages"), body, proof, "815",
                          wrong={"X-Body-Signature": "sha256=" + "0" * 64})
        self.assertEqual(sent.path, f"/line/texts/{self.key()}")
        self.is_answer(sent.json()[0]["content"]["words"])
        self.reported(post("deliveries"), b'[{"number": 4711, "code": 20}]', proof)

    def test_a_form_in_and_a_query_string_out(self):
        self.begin("query-string")

        def post(kind):
            return lambda body, headers: self.post(kind, FORM, body, headers)

        def proof(_):
            return {"Authorization": basic(self.described)}

        body = urllib.parse.urlencode({"handset": "1 208 555 0112", "message": "When is it due?",
                                       "time": str(SENT_UTC_S)}).encode()
        sent = self.taken(post("messages"), body, proof, None, recipient=None)
        query = dict(urllib.parse.parse_qsl(sent.path.partition("?")[2]))
        self.assertEqual((query["to"], query["from"], query["ref"]), (BERT, OFFICE, self.key()))
        self.is_answer(query["message"])
        self.reported(post("deliveries"), f"ref={query['ref']}&result=OK".encode(), proof)

    def test_deep_json_with_slashes_in_names_and_national_numbers(self):
        self.begin("deep")
        self.sink.answer = {"payload": {"uuid": "u-2"}}

        def post(kind):
            return lambda body, headers: self.post(kind, "application/vnd.gateway+json", body,
                                                   headers)

        def proof(_):
            return {"Authorization": "Bearer " + self.described["authentication"]["secrets"][1]}

        body = json.dumps({"event": {"uuid": "u-1", "at": BEGAN, "payload": {
            "contact": {"number": "(208) 555-0112"}, "channel": {"number": "208-555-0100"},
            "parts": [{"text/plain": "When is it due?"}], "media": [{}, {}, {}]}}}).encode()
        sent = self.taken(post("messages"), body, proof, "u-1", attachments=3)
        self.assertEqual(sent.path, "/v2/conversations/%2B12085550112/texts")
        self.is_answer(sent.json()["parts"][0]["text/plain"])
        report = b'{"event": {"kind": "text.received", "payload": {"uuid": "u-2"}}}'
        self.reported(post("deliveries"), report, proof)


class Examples(WholeTest):
    def test_every_example_is_a_good_configuration(self):
        self.gateway = None
        for file in sorted((daemon.TOP / "config" / "gateways").glob("*.json")):
            config = json.loads((daemon.TOP / "config" / "hutbell.example.json").read_text())
            config["gateways"] = {file.stem: json.loads(file.read_text())}
            config["reply_gateway"] = file.stem
            config["kb_folder"] = str(daemon.KB)
            config["cache_folder"] = str(daemon.CACHE)
            self.config_file.write_text(json.dumps(config))
            self.run_program("check-config", "--config", str(self.config_file))


if __name__ == "__main__":
    daemon.main()
