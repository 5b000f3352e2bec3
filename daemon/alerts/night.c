#include "night.h"

#include <string.h>

#include "clock.h"
#include "memory.h"

static const char *
text_at(const json_t *object, const char *key)
{
    const char *text = json_string_value(json_object_get(object, key));

    return text == NULL ? "" : text;
}

static char *
topics_of(void *arena, const json_t *verdict)
{
    char *topics = memory_copy(arena, "");
    json_t *topic;
    size_t i;

    json_array_foreach (json_object_get(verdict, "topics"), i, topic) {
        memory_append(&topics, "%s%s", i == 0 ? "" : ", ", json_string_value(topic));
    }
    return topics;
}

/* Each answer as "topic charge-car 912, nearest "can i plug it in the car", not far: charge-home".
 */
static char *
reasons_of(void *arena, const json_t *verdict)
{
    char *reasons = memory_copy(arena, "");
    json_t *answer;
    size_t i;

    json_array_foreach (json_object_get(verdict, "answers"), i, answer) {
        const json_t *why = json_object_get(answer, "why");
        json_int_t score = json_integer_value(json_object_get(why, "score"));
        const char *nearest = text_at(why, "nearest"), *runner_up = text_at(why, "runner_up");

        memory_append(&reasons, "%s%s %s", i == 0 ? "" : "; ", text_at(answer, "kind"),
                      text_at(answer, "id"));
        if (score > 0) {
            memory_append(&reasons, " %lld", (long long)score);
        }
        if (nearest[0] != '\0') {
            memory_append(&reasons, ", nearest \"%s\"", nearest);
        }
        if (runner_up[0] != '\0') {
            memory_append(&reasons, ", not far: %s", runner_up);
        }
    }
    return reasons;
}

static const char *
alert_of(void *arena, const json_t *verdict)
{
    const json_t *alert = json_object_get(verdict, "alert");

    return json_is_object(alert)
               ? memory_format(arena, "%s %s", text_at(alert, "level"), text_at(alert, "reason"))
               : NULL;
}

static void
add(void *arena, struct night_count **list, size_t *count, const char *what)
{
    size_t i;

    for (i = 0; i < *count; i++) {
        if (strcmp((*list)[i].what, what) == 0) {
            (*list)[i].count++;
            return;
        }
    }
    *list = memory_grow(arena, struct night_count, *list, *count);
    (*list)[(*count)++] = (struct night_count){memory_copy(arena, what), 1};
}

/* Most first; those of one number stay as they came. */
static void
sort_downwards(struct night_count *list, size_t count)
{
    size_t i, j;

    for (i = 1; i < count; i++) {
        struct night_count moved = list[i];

        for (j = i; j > 0 && list[j - 1].count < moved.count; j--) {
            list[j] = list[j - 1];
        }
        list[j] = moved;
    }
}

/* A span without an end ends with the newest thing in it, and not before now. */
static void
note_end(struct night *night, int64_t utc_s)
{
    if (utc_s > night->end_utc_s && utc_s < night->span.until_utc_s) {
        night->end_utc_s = utc_s;
    }
}

/* What a renter's text was about, and how it ended. */
static void
count_text(struct night *night, void *arena, const struct night_text *text, const json_t *verdict)
{
    const json_t *topics = json_object_get(verdict, "topics");
    bool has_matter = json_array_size(topics) > 0;
    json_t *each;
    size_t i;

    night->renter_texts++;
    night->by_hour[zone_local(night->zone, text->received_utc_s).hour]++;
    json_array_foreach (topics, i, each) {
        add(arena, &night->topics, &night->topic_count, json_string_value(each));
    }
    json_array_foreach (json_object_get(verdict, "answers"), i, each) {
        if (strcmp(text_at(each, "kind"), "sign") == 0) {
            add(arena, &night->signs, &night->sign_count, text_at(each, "id"));
            has_matter = true;
        }
        has_matter = has_matter || strcmp(text_at(each, "kind"), "gap") == 0;
    }
    night->no_matter += !has_matter;
    if (text->route != NULL) {
        add(arena, &night->routes, &night->route_count, text->route);
    }
}

static void
add_entry(struct night *night, void *arena, const struct night_text *text)
{
    struct night_entry *entry = &night->entries[night->entry_count++];
    const struct staff *staff = config_staff_by_phone(night->config, text->sender);
    json_t *verdict = text->json == NULL ? NULL : json_loads(text->json, 0, NULL);

    *entry = (struct night_entry){.text = text,
                                  .staff = staff == NULL ? NULL : staff->name,
                                  .topics = topics_of(arena, verdict),
                                  .reasons = reasons_of(arena, verdict),
                                  .alert = alert_of(arena, verdict)};
    if (staff == NULL) {
        count_text(night, arena, text, verdict);
    } else {
        night->staff_texts++;
    }
    note_end(night, text->received_utc_s);
    night->erased += text->body == NULL;
    json_decref(verdict);
}

/* Replies come in the order of their sending; each text takes its own, and the rest stands alone.
 */
static void
hand_out_replies(struct night *night, void *arena, const struct night_reply *replies, size_t count)
{
    struct night_reply *sent = NULL;
    size_t i, j;

    for (i = 0; i < night->entry_count; i++) {
        struct night_entry *entry = &night->entries[i];
        struct night_reply *own = NULL;

        for (j = 0; j < count; j++) {
            if (replies[j].why == NIGHT_ANSWER && replies[j].text_id == entry->text->id) {
                own = memory_grow(arena, struct night_reply, own, entry->reply_count);
                own[entry->reply_count++] = replies[j];
            }
        }
        entry->replies = own;
    }
    for (i = 0; i < count; i++) {
        if (replies[i].why != NIGHT_ANSWER) {
            sent = memory_grow(arena, struct night_reply, sent, night->sent_count);
            sent[night->sent_count++] = replies[i];
            note_end(night, replies[i].created_utc_s);
        }
    }
    night->sent = sent;
}

int
night_gather(struct store *store, void *arena, struct night *night, struct fault *fault)
{
    const struct night_span *span = &night->span;
    struct night_text *texts;
    struct night_reply *replies;
    size_t count, reply_count, i;

    night->end_utc_s = night->end_utc_s < span->until_utc_s ? night->end_utc_s : span->until_utc_s;
    if (night_rows_texts(store, arena, span, &texts, &count, fault) != 0 ||
        night_rows_replies(store, arena, span, &replies, &reply_count, fault) != 0 ||
        night_rows_alerts(store, arena, span, &night->alerts, &night->alert_count, fault) != 0) {
        return -1;
    }
    night->entries = memory_array(arena, struct night_entry, count);
    for (i = 0; i < count; i++) {
        add_entry(night, arena, &texts[i]);
    }
    for (i = 0; i < night->alert_count; i++) {
        note_end(night, night->alerts[i].opened_utc_s);
        note_end(night, night->alerts[i].closed_utc_s);
    }
    hand_out_replies(night, arena, replies, reply_count);
    sort_downwards(night->topics, night->topic_count);
    sort_downwards(night->signs, night->sign_count);
    sort_downwards(night->routes, night->route_count);
    return 0;
}

static int64_t
midnight(const struct zone *zone, int64_t now_utc_s, int days)
{
    struct local_time local = zone_local(zone, now_utc_s);

    local.day += days;
    local.hour = local.minute = local.second = 0;
    return zone_utc(zone, &local);
}

int
night_when(const char *text, const struct zone *zone, int64_t now_utc_s, int64_t *utc_s,
           struct fault *fault)
{
    struct local_time local;
    bool has_time;

    if (strcmp(text, "today") == 0) {
        *utc_s = midnight(zone, now_utc_s, 0);
    } else if (strcmp(text, "yesterday") == 0) {
        *utc_s = midnight(zone, now_utc_s, -1);
    } else if (clock_read_wall(text, &local, &has_time) == 0) {
        *utc_s = zone_utc(zone, &local);
    } else if (clock_read(text, utc_s) != 0) {
        fault_set(fault,
                  "\"%s\" is no time; give yesterday, today, 2026-02-13 or "
                  "2026-02-13T21:00:00-07:00",
                  text);
        return -1;
    }
    return 0;
}

const char *
night_staff(const struct night *night, const char *phone)
{
    const struct staff *staff = phone == NULL ? NULL : config_staff_by_phone(night->config, phone);

    return staff != NULL ? staff->name : phone == NULL ? "" : phone;
}

char *
night_why_sent(void *arena, const struct night *night, const struct night_reply *sent)
{
    switch (sent->why) {
    case NIGHT_STAFF:
        return memory_format(arena, "%s wrote this", night_staff(night, sent->by));
    case NIGHT_NOTICE:
        return memory_format(arena, "a notice to many that %s wrote", night_staff(night, sent->by));
    case NIGHT_REMINDER:
        return memory_copy(arena, "a reminder that they had asked for");
    default:
        return memory_copy(arena, "tells how their alert stands");
    }
}

char *
night_who(void *arena, const char *first_name, const char *place, const char *phone)
{
    return memory_format(arena, "%s%s%s%s%s", first_name == NULL ? "" : first_name,
                         first_name == NULL ? "" : ", ", place == NULL ? "" : place,
                         place == NULL ? "" : ", ", phone);
}

char *
night_time(void *arena, const struct night *night, int64_t utc_s)
{
    static const char *const days[] = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    static const char *const months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                         "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    struct local_time local = zone_local(night->zone, utc_s);

    return memory_format(arena, "%s %d %s %02d:%02d", days[local.weekday], local.day,
                         months[local.month - 1], local.hour, local.minute);
}
