/* The night book as data: CSV by RFC 4180 (libcsv), and JSON. Times are RFC 3339 in UTC. */
#include "night.h"

#include <string.h>

#include <csv.h>

#include "clock.h"
#include "memory.h"

/* What a spreadsheet would take for a formula, from a renter's text; a phone number is none. */
static bool
is_formula(const char *cell)
{
    bool is_phone =
        cell[0] == '+' && cell[1] != '\0' && strspn(cell + 1, "0123456789") == strlen(cell + 1);

    return cell[0] != '\0' && strchr("=+-@\t\r", cell[0]) != NULL && !is_phone;
}

/* One row; NULL is an empty cell. A quote before a formula keeps it a text. */
static void
write_row(FILE *out, const char *const *cells, size_t count)
{
    size_t i;

    for (i = 0; i < count; i++) {
        const char *cell = cells[i] == NULL ? "" : cells[i];
        char *guarded = NULL;

        if (is_formula(cell)) {
            cell = guarded = memory_format(NULL, "'%s", cell);
        }
        if (i > 0) {
            fputc(',', out);
        }
        csv_fwrite(out, cell, strlen(cell));
        talloc_free(guarded);
    }
    fputs("\r\n", out);
}

#define ROW(out, ...)                                                                              \
    write_row(out, (const char *const[]){__VA_ARGS__},                                             \
              sizeof((const char *const[]){__VA_ARGS__}) / sizeof(const char *))

static char *
count_text(void *arena, size_t count)
{
    return memory_format(arena, "%zu", count);
}

static char *
time_or_empty(void *arena, int64_t utc_s)
{
    return utc_s == 0 ? memory_copy(arena, "") : clock_text(arena, utc_s);
}

static void
csv_counts(FILE *out, void *arena, const char *kind, const struct night_count *list, size_t count)
{
    size_t i;

    for (i = 0; i < count; i++) {
        ROW(out, kind, list[i].what, count_text(arena, list[i].count), "", "", "");
    }
}

void
night_csv_report(FILE *out, const struct night *night)
{
    void *arena = memory_must(talloc_new(NULL));
    size_t i;

    ROW(out, "kind", "what", "count", "at", "taken", "closed");
    for (i = 0; i < 24; i++) {
        ROW(out, "hour", memory_format(arena, "%02zu", i), count_text(arena, night->by_hour[i]), "",
            "", "");
    }
    csv_counts(out, arena, "topic", night->topics, night->topic_count);
    csv_counts(out, arena, "sign", night->signs, night->sign_count);
    csv_counts(out, arena, "route", night->routes, night->route_count);
    ROW(out, "texts", "renters", count_text(arena, night->renter_texts), "", "", "");
    ROW(out, "texts", "staff", count_text(arena, night->staff_texts), "", "", "");
    for (i = 0; i < night->entry_count; i++) {
        const struct night_text *text = night->entries[i].text;

        if (text->route != NULL && strcmp(text->route, "unanswered") == 0) {
            ROW(out, "gap", text->body, "1", clock_text(arena, text->received_utc_s), "", "");
        }
    }
    for (i = 0; i < night->alert_count; i++) {
        const struct night_alert *alert = &night->alerts[i];

        ROW(out, "alert",
            memory_format(arena, "%lld %s %s", (long long)alert->number, alert->level,
                          alert->reasons),
            memory_format(arena, "%lld", (long long)alert->calls),
            clock_text(arena, alert->opened_utc_s), time_or_empty(arena, alert->taken_utc_s),
            time_or_empty(arena, alert->closed_utc_s));
    }
    talloc_free(arena);
}

static char *
replies_text(void *arena, const struct night_entry *entry)
{
    char *text = memory_copy(arena, "");
    size_t i;

    for (i = 0; i < entry->reply_count; i++) {
        memory_append(&text, "%s%s", i == 0 ? "" : "\n",
                      entry->replies[i].body == NULL ? "" : entry->replies[i].body);
    }
    return text;
}

void
night_csv_log(FILE *out, const struct night *night)
{
    size_t i;

    ROW(out, "at", "phone", "name", "place", "text", "route", "topics", "why", "alert", "replies",
        "written_by");
    for (i = 0; i < night->entry_count; i++) {
        void *arena = memory_must(talloc_new(NULL));
        const struct night_entry *entry = &night->entries[i];
        const struct night_text *text = entry->text;

        ROW(out, clock_text(arena, text->received_utc_s), text->sender, text->first_name,
            text->place, text->body, text->route, entry->topics, entry->reasons, entry->alert,
            replies_text(arena, entry), entry->staff != NULL ? entry->staff : text->sender);
        talloc_free(arena);
    }
    for (i = 0; i < night->sent_count; i++) {
        void *arena = memory_must(talloc_new(NULL));
        const struct night_reply *sent = &night->sent[i];

        ROW(out, clock_text(arena, sent->created_utc_s), sent->to, sent->first_name, sent->place,
            NULL, NULL, NULL, night_why_sent(arena, night, sent), NULL, sent->body,
            sent->by != NULL ? night_staff(night, sent->by) : "hutbell");
        talloc_free(arena);
    }
}

static json_t *
text_json(const char *text)
{
    json_t *string = text == NULL ? NULL : json_string(text);

    return string == NULL ? json_null() : string;
}

static json_t *
time_json(int64_t utc_s)
{
    char *text = utc_s == 0 ? NULL : clock_text(NULL, utc_s);
    json_t *value = text_json(text);

    talloc_free(text);
    return value;
}

static json_t *
counts_json(const struct night_count *list, size_t count)
{
    json_t *object = memory_must(json_object());
    size_t i;

    for (i = 0; i < count; i++) {
        json_object_set_new(object, list[i].what, json_integer((json_int_t)list[i].count));
    }
    return object;
}

static json_t *
alert_json(const struct night *night, const struct night_alert *alert)
{
    return memory_must(json_pack(
        "{s:I, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:I}", "number",
        (json_int_t)alert->number, "level", text_json(alert->level), "reasons",
        text_json(alert->reasons), "phone", text_json(alert->phone), "name",
        text_json(alert->first_name), "place", text_json(alert->place), "opened",
        time_json(alert->opened_utc_s), "taken", time_json(alert->taken_utc_s), "taken_by",
        text_json(alert->taken_by == NULL ? NULL : night_staff(night, alert->taken_by)), "closed",
        time_json(alert->closed_utc_s), "outcome", text_json(alert->outcome), "calls",
        (json_int_t)alert->calls));
}

static json_t *
entry_json(const struct night_entry *entry)
{
    const struct night_text *text = entry->text;
    json_t *replies = memory_must(json_array());
    json_t *verdict = text->json == NULL ? NULL : json_loads(text->json, 0, NULL);
    size_t i;

    for (i = 0; i < entry->reply_count; i++) {
        json_array_append_new(replies,
                              json_pack("{s:o, s:o}", "text", text_json(entry->replies[i].body),
                                        "state", text_json(entry->replies[i].state)));
    }
    return memory_must(json_pack(
        "{s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o}", "at", time_json(text->received_utc_s),
        "phone", text_json(text->sender), "name", text_json(text->first_name), "place",
        text_json(text->place), "text", text_json(text->body), "route", text_json(text->route),
        "verdict", verdict == NULL ? json_null() : verdict, "replies", replies, "staff",
        text_json(entry->staff)));
}

static json_t *
sent_json(const struct night *night, const struct night_reply *sent)
{
    char *why = night_why_sent(NULL, night, sent);
    json_t *json = memory_must(json_pack(
        "{s:o, s:o, s:o, s:o, s:o, s:o, s:s, s:o}", "at", time_json(sent->created_utc_s), "phone",
        text_json(sent->to), "name", text_json(sent->first_name), "place", text_json(sent->place),
        "text", text_json(sent->body), "state", text_json(sent->state), "why", why, "staff",
        text_json(sent->by == NULL ? NULL : night_staff(night, sent->by))));

    talloc_free(why);
    return json;
}

json_t *
night_json_report(const struct night *night)
{
    json_t *alerts = memory_must(json_array()), *gaps = memory_must(json_array());
    json_t *hours = memory_must(json_array());
    size_t i;

    for (i = 0; i < 24; i++) {
        json_array_append_new(hours, json_integer((json_int_t)night->by_hour[i]));
    }
    for (i = 0; i < night->alert_count; i++) {
        json_array_append_new(alerts, alert_json(night, &night->alerts[i]));
    }
    for (i = 0; i < night->entry_count; i++) {
        const struct night_text *text = night->entries[i].text;

        if (text->route != NULL && strcmp(text->route, "unanswered") == 0) {
            json_array_append_new(gaps, entry_json(&night->entries[i]));
        }
    }
    return memory_must(
        json_pack("{s:o, s:o, s:I, s:I, s:o, s:o, s:o, s:o, s:o, s:o}", "since",
                  time_json(night->span.since_utc_s), "until", time_json(night->end_utc_s), "texts",
                  (json_int_t)night->renter_texts, "staff_texts", (json_int_t)night->staff_texts,
                  "by_hour", hours, "signs", counts_json(night->signs, night->sign_count), "topics",
                  counts_json(night->topics, night->topic_count), "routes",
                  counts_json(night->routes, night->route_count), "gaps", gaps, "alerts", alerts));
}

json_t *
night_json_log(const struct night *night)
{
    json_t *texts = memory_must(json_array()), *sent = memory_must(json_array());
    size_t i;

    for (i = 0; i < night->entry_count; i++) {
        json_array_append_new(texts, entry_json(&night->entries[i]));
    }
    for (i = 0; i < night->sent_count; i++) {
        json_array_append_new(sent, sent_json(night, &night->sent[i]));
    }
    return memory_must(json_pack("{s:o, s:o, s:o, s:o}", "since",
                                 time_json(night->span.since_utc_s), "until",
                                 time_json(night->end_utc_s), "texts", texts, "sent", sent));
}
