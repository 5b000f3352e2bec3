/* The night book on a terminal of 80 columns. */
#include "night.h"

#include <string.h>

#include "memory.h"

enum { COLUMNS = 79, BAR = 50, GAPS_SHOWN = 30, LONGEST_SHOWN = 5, TOPICS_SHOWN = 20 };

static size_t
columns_of(const char *text, size_t length)
{
    size_t columns = 0, i;

    for (i = 0; i < length; i++) {
        columns += ((unsigned char)text[i] & 0xC0) != 0x80; /* not within a character of UTF-8 */
    }
    return columns;
}

/* Prints words with `first` before them and, on further lines, as many blanks. */
static void
print_wrapped(FILE *out, const char *first, const char *text)
{
    size_t indent = columns_of(first, strlen(first)), used = indent;
    const char *at = text + strspn(text, " \t\r\n");

    fputs(first, out);
    while (*at != '\0') {
        size_t length = strcspn(at, " \t\r\n"), columns = columns_of(at, length);

        if (used > indent && used + 1 + columns > COLUMNS) {
            fprintf(out, "\n%*s", (int)indent, "");
            used = indent;
        } else if (used > indent) {
            fputc(' ', out);
            used++;
        }
        fwrite(at, 1, length, out);
        used += columns;
        at += length;
        at += strspn(at, " \t\r\n");
    }
    fputc('\n', out);
}

static void
print_bar(FILE *out, const char *name, size_t count, size_t most)
{
    size_t length = most == 0 ? 0 : (count * BAR + most - 1) / most, i;

    fprintf(out, "  %-18s%4zu ", name, count);
    for (i = 0; i < length; i++) {
        fputc('#', out);
    }
    fputc('\n', out);
}

static void
print_hours(FILE *out, const struct night *night)
{
    size_t most = 0, hour;
    char name[16];

    for (hour = 0; hour < 24; hour++) {
        most = night->by_hour[hour] > most ? night->by_hour[hour] : most;
    }
    fputs("\nTexts by hour\n", out);
    for (hour = 0; hour < 24; hour++) {
        if (night->by_hour[hour] > 0) {
            snprintf(name, sizeof(name), "%02zu:00", hour);
            print_bar(out, name, night->by_hour[hour], most);
        }
    }
}

static void
print_counts(FILE *out, const char *title, const struct night_count *list, size_t count,
             size_t shown)
{
    size_t i;

    fprintf(out, "\n%s\n", title);
    for (i = 0; i < count && i < shown; i++) {
        print_bar(out, list[i].what, list[i].count, list[0].count);
    }
    if (count > shown) {
        fprintf(out, "  and %zu more\n", count - shown);
    }
    if (count == 0) {
        fputs("  nothing\n", out);
    }
}

static void
print_gaps(FILE *out, const struct night *night, void *arena)
{
    size_t found = 0, i;

    fputs("\nWhat nothing answered\n", out);
    for (i = 0; i < night->entry_count; i++) {
        const struct night_text *text = night->entries[i].text;

        if (text->route == NULL || strcmp(text->route, "unanswered") != 0) {
            continue;
        }
        if (found++ < GAPS_SHOWN) {
            print_wrapped(
                out, memory_format(arena, "  %s  ", night_time(arena, night, text->received_utc_s)),
                text->body == NULL ? "(its words are no longer kept)" : text->body);
        }
    }
    if (found > GAPS_SHOWN) {
        fprintf(out, "  and %zu more: hutbell log shows all\n", found - GAPS_SHOWN);
    }
    if (found == 0) {
        fputs("  nothing\n", out);
    }
}

static char *
span_text(void *arena, int64_t seconds)
{
    int64_t minutes = seconds / 60;

    return seconds < 60    ? memory_format(arena, "%lld s", (long long)seconds)
           : minutes < 120 ? memory_format(arena, "%lld min", (long long)minutes)
                           : memory_format(arena, "%lld h %02lld min", (long long)(minutes / 60),
                                           (long long)(minutes % 60));
}

/* "sign:unit-stopped, flowing:no, gap" as "unit stopped, flowing no, not answered" */
static char *
in_words(void *arena, const char *reasons)
{
    char *text = memory_copy(arena, "");
    const char *at = reasons;
    char *dash;

    while (*at != '\0') {
        size_t length = strcspn(at, ",");
        const char *colon = memchr(at, ':', length);
        bool is_answer = colon != NULL && strncmp(at, "flowing:", 8) == 0;
        const char *from = colon != NULL && !is_answer ? colon + 1 : at;
        int left = (int)(at + length - from);
        bool is_gap = left == 3 && strncmp(from, "gap", 3) == 0;

        memory_append(&text, "%s", text[0] == '\0' ? "" : ", ");
        memory_append(&text, "%.*s", is_gap ? 100 : left, is_gap ? "not answered" : from);
        at += length;
        at += strspn(at, ", ");
    }
    for (dash = strpbrk(text, "-:"); dash != NULL; dash = strpbrk(dash, "-:")) {
        *dash = ' ';
    }
    return text;
}

static void
print_alert(FILE *out, const struct night *night, void *arena, const struct night_alert *alert)
{
    char *line = memory_format(arena, "%s, %s. %s. ", alert->level, in_words(arena, alert->reasons),
                               night_who(arena, alert->first_name, alert->place, alert->phone));

    if (alert->taken_utc_s > 0) {
        memory_append(&line, "%s had it after %s", night_staff(night, alert->taken_by),
                      span_text(arena, alert->taken_utc_s - alert->opened_utc_s));
    } else {
        memory_append(&line, "Nobody has taken it, called %lld time%s", (long long)alert->calls,
                      alert->calls == 1 ? "" : "s");
    }
    if (alert->closed_utc_s > 0) {
        memory_append(&line, "; closed after %s: %s",
                      span_text(arena, alert->closed_utc_s - alert->opened_utc_s),
                      alert->outcome == NULL ? "no outcome told" : alert->outcome);
    } else {
        memory_append(&line, "; still open");
    }
    print_wrapped(out,
                  memory_format(arena, "  %s  %lld  ",
                                night_time(arena, night, alert->opened_utc_s),
                                (long long)alert->number),
                  line);
}

/* How long it took until a person had it; until now if nobody has. */
static int64_t
waited(const struct night *night, const struct night_alert *alert)
{
    int64_t until = alert->taken_utc_s > 0    ? alert->taken_utc_s
                    : alert->closed_utc_s > 0 ? alert->closed_utc_s
                                              : night->end_utc_s;

    return until - alert->opened_utc_s;
}

static void
print_longest(FILE *out, const struct night *night, void *arena)
{
    bool *shown = memory_array(arena, bool, night->alert_count);
    size_t round, i;

    fputs("\nWhat waited longest for a person\n", out);
    for (round = 0; round < LONGEST_SHOWN && round < night->alert_count; round++) {
        size_t longest = night->alert_count;

        for (i = 0; i < night->alert_count; i++) {
            if (!shown[i] &&
                (longest == night->alert_count ||
                 waited(night, &night->alerts[i]) > waited(night, &night->alerts[longest]))) {
                longest = i;
            }
        }
        shown[longest] = true;
        fprintf(out, "  %-14s alert %lld, %s%s\n",
                span_text(arena, waited(night, &night->alerts[longest])),
                (long long)night->alerts[longest].number, night->alerts[longest].level,
                night->alerts[longest].taken_utc_s > 0 ? "" : ", not taken");
    }
}

void
night_print_report(FILE *out, const struct night *night)
{
    void *arena = memory_must(talloc_new(NULL));
    size_t i;

    fprintf(out, "From %s to %s:\n%zu text%s of renters, %zu of staff, %zu alert%s\n",
            night_time(arena, night, night->span.since_utc_s),
            night_time(arena, night, night->end_utc_s), night->renter_texts,
            night->renter_texts == 1 ? "" : "s", night->staff_texts, night->alert_count,
            night->alert_count == 1 ? "" : "s");
    if (night->erased > 0) {
        fprintf(out, "(the words of %zu are no longer kept)\n", night->erased);
    }
    if (night->renter_texts > 0) {
        print_hours(out, night);
    }
    print_counts(out, "What renters asked", night->topics, night->topic_count, TOPICS_SHOWN);
    print_counts(out, "Warning signs they told", night->signs, night->sign_count, TOPICS_SHOWN);
    if (night->no_matter > 0) {
        fprintf(out,
                "\n%zu of their texts asked or told none of these: \"yes\", \"thanks\", words to "
                "staff\n",
                night->no_matter);
    }
    print_counts(out, "How their texts ended", night->routes, night->route_count, TOPICS_SHOWN);
    print_gaps(out, night, arena);
    fputs("\nAlerts\n", out);
    for (i = 0; i < night->alert_count; i++) {
        print_alert(out, night, arena, &night->alerts[i]);
    }
    if (night->alert_count == 0) {
        fputs("  none\n", out);
    } else {
        print_longest(out, night, arena);
    }
    talloc_free(arena);
}

static void
print_reply(FILE *out, void *arena, const char *first, const struct night_reply *reply)
{
    print_wrapped(out, first,
                  memory_format(arena, "%s (%s)",
                                reply->body == NULL ? "(no longer kept)" : reply->body,
                                reply->state == NULL ? "not sent yet" : reply->state));
}

static void
print_sent(FILE *out, const struct night *night, const struct night_reply *sent)
{
    void *arena = memory_must(talloc_new(NULL));

    fprintf(out, "\n%s  to %s\n", night_time(arena, night, sent->created_utc_s),
            night_who(arena, sent->first_name, sent->place, sent->to));
    print_reply(out, arena, sent->by != NULL ? "  staff: " : "  we:    ", sent);
    print_wrapped(out, "  why:   ", night_why_sent(arena, night, sent));
    talloc_free(arena);
}

static void
print_entry(FILE *out, const struct night *night, const struct night_entry *entry)
{
    void *arena = memory_must(talloc_new(NULL));
    const struct night_text *text = entry->text;
    size_t i;

    fprintf(out, "\n%s  %s\n", night_time(arena, night, text->received_utc_s),
            entry->staff != NULL ? night_who(arena, entry->staff, "staff", text->sender)
                                 : night_who(arena, text->first_name, text->place, text->sender));
    print_wrapped(out, entry->staff != NULL ? "  staff: " : "  they:  ",
                  text->body == NULL ? "(its words are no longer kept)" : text->body);
    for (i = 0; i < entry->reply_count; i++) {
        print_reply(out, arena, "  we:    ", &entry->replies[i]);
    }
    print_wrapped(out, "  why:   ",
                  memory_format(arena, "%s%s%s", text->route == NULL ? "not decided" : text->route,
                                entry->reasons[0] == '\0' ? "" : "; ", entry->reasons));
    if (entry->alert != NULL) {
        print_wrapped(out, "  alert: ", entry->alert);
    }
    talloc_free(arena);
}

void
night_print_log(FILE *out, const struct night *night)
{
    size_t i, sent = 0;

    for (i = 0; i < night->entry_count; i++) {
        const struct night_entry *entry = &night->entries[i];

        while (sent < night->sent_count && night_sent_before(&night->sent[sent], entry->text)) {
            print_sent(out, night, &night->sent[sent++]);
        }
        print_entry(out, night, entry);
    }
    while (sent < night->sent_count) {
        print_sent(out, night, &night->sent[sent++]);
    }
    fprintf(out, "%s%zu texts", night->entry_count + sent == 0 ? "" : "\n", night->entry_count);
    if (sent > 0) {
        fprintf(out, ", and %zu of ours that answer none", sent);
    }
    fputc('\n', out);
}
