#include "staff_list.h"

#include "found.h"
#include "memory.h"
#include "parts.h"
#include "say.h"

enum { LIST_MAX = 10 /* alerts in one text */, PARTS_MAX = 2 };

const char *
staff_list_holder(const struct open_alert *alert)
{
    return alert->taken_name != NULL ? alert->taken_name : alert->taken_by;
}

size_t
staff_list_count(const struct context *context, int64_t head)
{
    size_t count = 0, i;

    for (i = 0; i < context->alert_count; i++) {
        count += context->alerts[i].head == head ? 1 : 0;
    }
    return count;
}

/* "Gwen, Cabin 4" behind the joint, as much of it as the record has. */
static void
append_who(char **text, const char *joint, const struct open_alert *alert)
{
    if (alert->first_name != NULL) {
        memory_append(text, "%s%s", joint, alert->first_name);
        joint = ", ";
    }
    if (alert->place != NULL) {
        memory_append(text, "%s%s", joint, alert->place);
    }
}

char *
staff_list_who(const struct asked *whole, const struct open_alert *alert)
{
    char *text = memory_copy(whole->arena, "");

    append_who(&text, "", alert);
    return text;
}

char *
staff_list_whose(const struct asked *whole, const struct open_alert *alert)
{
    char *text = memory_copy(whole->arena, alert->brief);

    append_who(&text, ", ", alert);
    if (alert->phone[0] == '+') {
        memory_append(&text, ", %s", alert->phone);
    }
    return text;
}

char *
staff_list_record(const struct asked *whole, const struct open_alert *alert, const char *before)
{
    return alert->rental_id == NULL ? memory_copy(whole->arena, "")
                                    : memory_format(whole->arena, "%s%s", before,
                                                    say(whole->arena, whole->context->house,
                                                        LANGUAGE_EN, SAY_STAFF_RECORD, NULL));
}

/* ---- All that are open ---------------------------------------------------------------------- */

/* How a list is written: whole, or so that more of it fits. */
struct listing {
    char *text;
    bool brief; /* neither place nor phone */
    size_t count, room;
};

/* "20 min ago", "5 h ago", "3 days ago" */
static void
append_age(char **text, const struct context *context, const struct open_alert *alert)
{
    int64_t minutes = (context->now_utc_s - alert->opened_utc_s) / 60;

    if (minutes < 1) {
        memory_append(text, ", just now");
    } else if (minutes < 60) {
        memory_append(text, ", %lld min ago", (long long)minutes);
    } else if (minutes < 48 * 60) {
        memory_append(text, ", %lld h ago", (long long)minutes / 60);
    } else {
        memory_append(text, ", %lld days ago", (long long)minutes / (24 * 60));
    }
}

static void
append_alert(struct listing *listing, const struct context *context, const struct open_alert *alert)
{
    static const char *const levels[] = {[ALERT_NONE] = "",
                                         [ALERT_OFFICE] = "OFFICE",
                                         [ALERT_URGENT] = "URGENT",
                                         [ALERT_EMERGENCY] = "EMERGENCY"};
    char **text = &listing->text;

    memory_append(text, "%s%lld %s ", listing->count++ == 0 ? "" : "\n", (long long)alert->number,
                  levels[alert->level]);
    if (alert->head == alert->number) {
        memory_append(text, "%s", alert->brief);
    } else {
        memory_append(text, "with %lld", (long long)alert->head);
    }
    if (!listing->brief) {
        append_who(text, ", ", alert);
        memory_append(text, ", %s", alert->phone);
    } else {
        memory_append(text, ", %s", alert->first_name != NULL ? alert->first_name : alert->phone);
    }
    append_age(text, context, alert);
    if (alert->head == alert->number) {
        memory_append(text, "%s%s", alert->taken_by != NULL ? ", with " : ", nobody has it",
                      alert->taken_by != NULL ? staff_list_holder(alert) : "");
    }
}

/* Those who are called by this one behind it. */
static void
append_group(struct listing *listing, const struct context *context, const struct open_alert *head)
{
    size_t i;

    if (listing->count < listing->room) {
        append_alert(listing, context, head);
    }
    for (i = 0; i < context->alert_count && listing->count < listing->room; i++) {
        if (context->alerts[i].head == head->number && &context->alerts[i] != head) {
            append_alert(listing, context, &context->alerts[i]);
        }
    }
}

/* The first `room` of them. */
static char *
list_open(const struct asked *whole, size_t room, bool brief)
{
    const struct context *context = whole->context;
    struct listing listing = {memory_copy(whole->arena, ""), brief, 0, room};
    size_t i;
    int level;

    for (level = ALERT_EMERGENCY; level > ALERT_NONE; level--) {
        for (i = 0; i < context->alert_count; i++) {
            /* NOLINTNEXTLINE(clang-analyzer-core.NullDereference): a count has its list */
            const struct open_alert *alert = &context->alerts[i];

            if ((int)alert->level == level && alert->head == alert->number) {
                append_group(&listing, context, alert);
            }
        }
    }
    if (listing.count < context->alert_count) {
        memory_append(&listing.text, "\nand %zu more", context->alert_count - listing.count);
    }
    if (brief) {
        memory_append(&listing.text, "\nOPEN and its number: place and phone.");
    }
    return listing.text;
}

char *
staff_list_open(const struct asked *whole, const char *before, const char *after)
{
    size_t count = whole->context->alert_count, shown = count < LIST_MAX ? count : LIST_MAX;
    bool brief = shown < count;
    char *text;

    for (;;) {
        text = memory_format(whole->arena, "%s%s%s", before, list_open(whole, shown, brief), after);
        if (shown <= 1 || parts_count(parts_plain(whole->arena, text)).parts <= PARTS_MAX) {
            return text;
        }
        shown -= brief ? 1 : 0; /* first all of them in fewer words */
        brief = true;
    }
}

char *
staff_list_one(const struct asked *whole, const struct open_alert *alert)
{
    struct listing listing = {memory_copy(whole->arena, ""), false, 0, 1};

    append_alert(&listing, whole->context, alert);
    return memory_format(whole->arena, "%s%s", listing.text,
                         staff_list_record(whole, alert, ".\n"));
}

/* ---- Those who are called together ---------------------------------------------------------- */

/* Who told no charge is first: 0. */
static bool
is_before(const struct open_alert *first, const struct open_alert *second)
{
    return first->runs_out_utc_s != second->runs_out_utc_s
               ? first->runs_out_utc_s < second->runs_out_utc_s
               : first->number < second->number;
}

static struct open_alert *
sorted(const struct asked *whole, int64_t head, size_t count)
{
    const struct context *context = whole->context;
    struct open_alert *list = memory_array(whole->arena, struct open_alert, count);
    size_t used = 0, i, at;

    for (i = 0; i < context->alert_count && used < count; i++) {
        if (context->alerts[i].head != head) {
            continue;
        }
        for (at = used++; at > 0 && is_before(&context->alerts[i], &list[at - 1]); at--) {
            list[at] = list[at - 1];
        }
        list[at] = context->alerts[i];
    }
    return list;
}

/* The first `shown` of them behind the words. */
static char *
first_of(const struct asked *whole, const struct open_alert *list, size_t count, size_t shown,
         const char *words)
{
    char *text = memory_format(whole->arena, "%s First to run out first:", words);
    size_t i;

    for (i = 0; i < shown; i++) {
        memory_append(&text, "\n%lld", (long long)list[i].number);
        append_who(&text, " ", &list[i]);
        if (list[i].runs_out_utc_s != 0) {
            memory_append(&text, ", until %s",
                          say_clock(whole->arena, whole->context->zone, list[i].runs_out_utc_s));
        } else {
            memory_append(&text, ", charge not told");
        }
    }
    if (shown < count) {
        memory_append(&text, "\nand %zu more", count - shown);
    }
    return text;
}

char *
staff_list_taken(const struct asked *whole, int64_t head, const char *words, bool *names_all)
{
    size_t count = staff_list_count(whole->context, head);
    struct open_alert *list = sorted(whole, head, count);
    size_t shown = count;
    char *text = first_of(whole, list, count, shown, words);

    while (shown > 1 && parts_count(parts_plain(whole->arena, text)).parts > PARTS_MAX) {
        text = first_of(whole, list, count, --shown, words);
    }
    *names_all = shown == count;
    return text;
}

/* ---- What is closed ------------------------------------------------------------------------- */

static bool
is_closed_with(const struct open_alert *alert, const struct open_alert *head)
{
    return alert == head || (alert->head == head->number && !alert->is_new);
}

/* Why it stays open when this one is closed; NULL: it is another matter. */
static const char *
stays_for(const struct open_alert *alert, const struct open_alert *head)
{
    if (alert->head == head->number) {
        return "nobody was called about it yet";
    }
    return alert->level == ALERT_EMERGENCY && staff_list_is_outage(alert) ? "emergency" : NULL;
}

static void
append_closed(char **text, const struct context *context, const struct open_alert *head)
{
    const char *joint = " Closed: ";
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        if (is_closed_with(&context->alerts[i], head)) {
            memory_append(text, "%s%lld", joint, (long long)context->alerts[i].number);
            append_who(text, " ", &context->alerts[i]);
            joint = "; ";
        }
    }
    memory_append(text, ".");
}

bool
staff_list_is_outage(const struct open_alert *alert)
{
    return alert->head == alert->number && found_alert_tells(alert, "power-out-now");
}

char *
staff_list_closed(const struct asked *whole, const struct open_alert *head, const char *words)
{
    const struct context *context = whole->context;
    char *text = memory_copy(whole->arena, words);
    size_t i;

    if (staff_list_count(context, head->number) > 1) {
        append_closed(&text, context, head);
    }
    for (i = 0; i < context->alert_count; i++) {
        const struct open_alert *alert = &context->alerts[i];
        const char *why = is_closed_with(alert, head) ? NULL : stays_for(alert, head);

        if (why != NULL) {
            memory_append(&text, " %lld", (long long)alert->number);
            append_who(&text, " ", alert);
            memory_append(&text, " stays open: %s.", why);
        }
    }
    return text;
}
