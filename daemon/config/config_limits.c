/* Limits: of requests and of what is sent, and how many texts are too many. */
#include "config_limits.h"

#include "config.h"
#include "http.h"

#define COUNT(array) (sizeof(array) / sizeof((array)[0]))
#define DAY_S ((int64_t)86400)

#define NUMBER(key_name, number_kind, field, least, most, fallback, what)                          \
    {                                                                                              \
        .name = (key_name), .kind = (number_kind), .at = offsetof(struct config, field),           \
        .low = (least), .high = (most), .number = (fallback), .means = (what)                      \
    }

static const struct key limits_key_list[] = {
    NUMBER("connections", KEY_INT, limits.connections, 1, 4096, 256, "HTTP connections at once"),
    NUMBER("request_s", KEY_INT, limits.request_s, 1, 300, 10,
           "seconds in which a whole request must have come"),
    NUMBER("body_bytes", KEY_INT, limits.body_bytes, 1024, HTTP_BODY_BYTES_MAX, 65536,
           "largest body of a request"),
    NUMBER("header_bytes", KEY_INT, limits.header_bytes, 1024, HTTP_HEADER_BYTES_MAX, 8192,
           "largest head of a request"),
    NUMBER("outbox_running", KEY_INT, limits.outbox_running, 1, 256, 16, "sends at once"),
    NUMBER("give_up_s", KEY_SECONDS, limits.give_up_s, 60, 7 * DAY_S, 1800,
           "seconds after which a reply that could not be sent goes to a person"),
    NUMBER("stale_s", KEY_SECONDS, limits.stale_s, 60, 86400, 600,
           "seconds after which an unsent reply that holds minutes is worked out again"),
    NUMBER("unconfirmed_s", KEY_SECONDS, limits.unconfirmed_s, 10, 3600, 120,
           "seconds after which staff are told that an emergency reply was not delivered"),
    NUMBER("outage_s", KEY_SECONDS, limits.outage_s, 0, DAY_S, 3600,
           "seconds after the last renter of an area told that the mains failed in which the next "
           "joins the same alert; 0: each is an alert by itself"),
    NUMBER("flowing_s", KEY_SECONDS, limits.flowing_s, 60, 3600, 300,
           "seconds in which a renter must say that oxygen flows again, or it is an emergency"),
    NUMBER("plug_s", KEY_SECONDS, limits.plug_s, 60, 3600, 600,
           "seconds in which a renter with under an hour must say that a plug is near, and one "
           "whose number may be a reading that it is an age, or staff are called"),
    NUMBER("talk_s", KEY_SECONDS, limits.talk_s, 60, 3600, 600,
           "seconds without an answer after which a renter whom a person has is answered by the "
           "program again, and the alert is called again"),
    NUMBER("talk_urgent_s", KEY_SECONDS, limits.talk_urgent_s, 60, 3600, 300,
           "the same for an urgent alert or an emergency"),
    NUMBER("repeat_keep_s", KEY_SECONDS, limits.repeat_keep_s, 3600, 90 * DAY_S, 7 * DAY_S,
           "seconds for which a gateway's ids are remembered, to know a repeat"),
};
const struct key_table limits_keys = {limits_key_list, COUNT(limits_key_list)};

static const struct key flood_key_list[] = {
    NUMBER("window_s", KEY_SECONDS, floods.window_s, 60, 86400, 600,
           "seconds in which texts are counted"),
    NUMBER("sender_texts", KEY_INT, floods.sender_texts, 0, 500, 20,
           "texts of one phone in that time; past it only signs are answered, the phone is told "
           "once and so is the office; 0: no limit"),
    NUMBER("same_texts", KEY_INT, floods.same_texts, 0, 500, 6,
           "the same words from one phone in that time, as of a machine that answers ours; past it "
           "the same; 0: no limit"),
    NUMBER("day_texts", KEY_INT, floods.day_texts, 0, 2000, 200,
           "texts of one phone in 24 hours; past it the same; 0: no limit"),
    NUMBER("replies", KEY_INT, floods.replies, 0, 5000, 600,
           "replies to all phones together in that time; past it only signs are answered, renters "
           "are told once and staff are called; 0: no limit"),
};

const struct key_table flood_keys = {flood_key_list, COUNT(flood_key_list)};
