#include "gather.h"

#include <stdlib.h>
#include <string.h>

#include <glib.h>
#include <jansson.h>

#include "alert_rows.h"
#include "conversation_rows.h"
#include "duty.h"
#include "limits.h"
#include "log.h"
#include "memory.h"
#include "rental_record.h"
#include "reminder_rows.h"
#include "rental_rows.h"
#include "rest_rows.h"
#include "texts.h"
#include "told_json.h"
#include "turns.h"

struct context
gather_without_record(const struct surroundings *surroundings, const char *sender)
{
    const struct config *config = surroundings->loaded->config;
    struct context context = {.kb = surroundings->loaded->kb,
                              .lexicon = surroundings->loaded->lexicon,
                              .workspace = surroundings->workspace,
                              .house = &config->house,
                              .zone = &surroundings->loaded->zone,
                              .now_utc_s = surroundings->now_utc_s,
                              .office_opens_utc_s =
                                  duty_office_opens(config, surroundings->now_utc_s),
                              .role = SENDER_STRANGER};
    size_t i;

    for (i = 0; i < config->staff_count; i++) {
        if (strcmp(config->staff[i].phone, sender) == 0) {
            context.role = SENDER_STAFF;
            context.staff_name = config->staff[i].name;
        }
    }
    return context;
}

/* Staff know each other by name, and write to each other directly. */
static void
add_staff_of(const struct config *config, struct open_alert *alerts, size_t count)
{
    const struct staff *taker;
    size_t i;

    for (i = 0; i < count; i++) {
        taker =
            alerts[i].taken_by != NULL ? config_staff_by_phone(config, alerts[i].taken_by) : NULL;
        alerts[i].taken_name = taker != NULL ? taker->name : NULL;
        alerts[i].no_texts |= strcmp(alerts[i].phone, ALERT_ABOUT_US) == 0 ||
                              config_staff_by_phone(config, alerts[i].phone) != NULL;
    }
}

static void
add_colleagues(void *arena, const struct config *config, struct context *context)
{
    struct colleague *list = memory_array(arena, struct colleague, config->staff_count);
    size_t i;

    for (i = 0; i < config->staff_count; i++) {
        list[i] = (struct colleague){config->staff[i].name, config->staff[i].phone};
    }
    context->colleagues = list;
    context->colleague_count = config->staff_count;
}

/* What grows while the context is put together. */
struct gathering {
    struct store *store;
    void *arena;
    struct rental *rentals;
    struct battery_account *accounts;
    size_t rental_count;
    bool rests; /* an active one is left out, for its renter has died, and no other is active */
    json_t *from_rentals;
};

/* A record that this program cannot read is no reason to leave its renter without any answer. */
static bool
read_rental(struct gathering *gathering, const struct rental_row *row, struct rental *rental)
{
    struct record_namer namer = {0};
    struct faults faults = {0};
    json_t *json = json_loads(row->json, 0, NULL);
    bool is_read = rental_record_read(gathering->arena, json, &namer, rental, &faults) == 0;

    if (is_read) {
        rental->digest = row->digest;
    } else {
        log_event(LOG_ERROR_LEVEL, "rental-unreadable", "rental", row->rental_id, "why",
                  faults.list[0].text, NULL);
    }
    faults_release(&faults);
    json_decref(json);
    return is_read;
}

static int
read_account(struct gathering *gathering, const char *rental_id, struct battery_account *account,
             int64_t *row, struct fault *fault)
{
    char *told;
    json_t *json;

    memset(account, 0, sizeof(*account));
    if (battery_rows_newest(gathering->store, gathering->arena, rental_id, row,
                            &account->as_of_utc_s, &told, fault) != 0) {
        return -1;
    }
    if (told != NULL) {
        json = json_loads(told, 0, NULL);
        told_from_json(json, &account->told);
        account->known = told_has_charge(&account->told); /* else it was voided */
        json_decref(json);
    }
    return 0;
}

static int
add_rental(struct gathering *gathering, const struct rental *rental, struct fault *fault)
{
    struct battery_account *account = &gathering->accounts[gathering->rental_count];
    int64_t row;

    if (read_account(gathering, rental->rental_id, account, &row, fault) != 0) {
        return -1;
    }
    gathering->rentals[gathering->rental_count++] = *rental;
    json_array_append_new(
        gathering->from_rentals,
        memory_must(json_pack("{s:s, s:I}", "digest", rental->digest, "account", (json_int_t)row)));
    return 0;
}

/* Whose renter has died is not spoken of any more. */
static int
add_unless_rests(struct gathering *gathering, const struct rental *rental, struct fault *fault)
{
    bool rests;

    if (rest_rows_is(gathering->store, rental->rental_id, &rests, fault) != 0) {
        return -1;
    }
    if (rests) {
        gathering->rests |= rental_is_active(rental);
        return 0;
    }
    return add_rental(gathering, rental, fault);
}

/* Active ones first, each half in the order of their ids. */
static int
add_rentals(struct gathering *gathering, const char *sender, struct fault *fault)
{
    struct rental_row *rows;
    struct rental *read;
    size_t count, i, read_count = 0;
    int want_active;

    if (rental_rows_of_phone(gathering->store, gathering->arena, sender, &rows, &count, fault) !=
        0) {
        return -1;
    }
    read = memory_array(gathering->arena, struct rental, count + 1);
    gathering->rentals = memory_array(gathering->arena, struct rental, count + 1);
    gathering->accounts = memory_array(gathering->arena, struct battery_account, count + 1);
    for (i = 0; i < count; i++) {
        read_count += read_rental(gathering, &rows[i], &read[read_count]);
    }
    for (want_active = 1; want_active >= 0; want_active--) {
        for (i = 0; i < read_count; i++) {
            bool is_wanted =
                read[i].state != RENTAL_CLOSED && rental_is_active(&read[i]) == (want_active == 1);

            if (is_wanted && add_unless_rests(gathering, &read[i], fault) != 0) {
                return -1;
            }
        }
    }
    gathering->rests = gathering->rests && gathering->rental_count == 0;
    return 0;
}

/* An id as it is written, else in capitals, else in small letters: staff type on phones. */
static int
find_rental(struct store *store, void *arena, const char *id, struct rental_row *row, bool *found,
            struct fault *fault)
{
    char *spellings[] = {g_strdup(id), g_ascii_strup(id, -1), g_ascii_strdown(id, -1)};
    int rc = 0;
    size_t i;

    *found = false;
    for (i = 0; i < sizeof(spellings) / sizeof(spellings[0]); i++) {
        if (rc == 0 && !*found) {
            rc = rental_rows_newest(store, arena, spellings[i], row, found, fault);
        }
        g_free(spellings[i]);
    }
    return rc;
}

/* For staff: the rental whose id is the last word of their text. */
static int
add_named_rental(struct gathering *gathering, const char *text, struct context *context,
                 struct fault *fault)
{
    char *id = memory_copy(gathering->arena, text);
    struct rental *rental = memory_new(gathering->arena, struct rental);
    struct rental_row row;
    size_t end = strlen(id);
    bool found;

    while (end > 0 && strchr(" \t\r\n.,", id[end - 1]) != NULL) {
        id[--end] = '\0';
    }
    while (end > 0 && strchr(" \t\r\n", id[end - 1]) == NULL) {
        end--;
    }
    if (find_rental(gathering->store, gathering->arena, id + end, &row, &found, fault) != 0) {
        return -1;
    }
    if (found && read_rental(gathering, &row, rental)) {
        context->named_rental = rental;
    }
    return 0;
}

/* What their words may name. */
static int
add_for_staff(struct gathering *gathering, const struct surroundings *surroundings,
              const struct message *message, struct context *context, struct fault *fault)
{
    const struct config *config = surroundings->loaded->config;

    add_colleagues(gathering->arena, config, context);
    return add_named_rental(gathering, message->text, context, fault) != 0
               ? -1
               : turns_of(gathering->store, gathering->arena, config, message->sender,
                          surroundings->now_utc_s, context, fault);
}

static json_t *
numbers_json(const int64_t *numbers, size_t count)
{
    json_t *list = memory_must(json_array());
    size_t i;

    for (i = 0; i < count; i++) {
        json_array_append_new(list, memory_must(json_integer(numbers[i])));
    }
    return list;
}

static json_t *
alerts_json(const struct context *context)
{
    json_t *list = memory_must(json_array());
    size_t i;

    for (i = 0; i < context->alert_count; i++) {
        json_array_append_new(list, memory_must(json_integer(context->alerts[i].number)));
    }
    return list;
}

static const char *
started_from_text(void *arena, const struct gathering *gathering, const struct recent_texts *recent,
                  const struct context *context)
{
    json_t *json = memory_must(json_pack("{s:O, s:o, s:o}", "rentals", gathering->from_rentals,
                                         "recent", numbers_json(recent->ids, recent->count),
                                         "alerts", alerts_json(context)));
    char *dumped, *text;

    if (context->named_rental != NULL) {
        json_object_set_new(json, "named", memory_must(json_string(context->named_rental->digest)));
    }
    if (context->limit != LIMIT_NONE || context->is_echo) {
        json_object_set_new(
            json, "limit",
            memory_must(json_pack("{s:i, s:b, s:b}", "over", (int)context->limit, "told",
                                  (int)context->limit_told, "echo", (int)context->is_echo)));
    }
    if (context->office_opens_utc_s > context->now_utc_s) {
        json_object_set_new(json, "office_opens",
                            memory_must(json_integer(context->office_opens_utc_s)));
    }
    dumped = memory_must(json_dumps(json, JSON_COMPACT));
    text = memory_copy(arena, dumped);
    free(dumped);
    json_decref(json);
    return text;
}

static int
add_conversation(struct store *store, void *arena, const char *sender, int64_t row,
                 struct conversation *conversation, struct fault *fault)
{
    if (row == CONVERSATION_NEWEST) {
        return conversation_rows_newest(store, arena, sender, conversation, fault);
    }
    return conversation_rows_at(store, arena, sender, row, conversation, fault);
}

int
gather(struct store *store, void *arena, const struct surroundings *surroundings,
       const struct message *message, int64_t text_id, int64_t conversation_row,
       struct context *context, const char **started_from, struct fault *fault)
{
    struct gathering gathering = {
        .store = store, .arena = arena, .from_rentals = memory_must(json_array())};
    struct recent_texts *recent = memory_new(arena, struct recent_texts);
    struct open_alert *alerts;
    struct reminder *reminders;
    int rc = -1;

    *context = gather_without_record(surroundings, message->sender);
    if (add_rentals(&gathering, message->sender, fault) != 0 ||
        add_conversation(store, arena, message->sender, conversation_row, &context->conversation,
                         fault) != 0 ||
        texts_recent(store, arena, message, text_id, recent, fault) != 0 ||
        reminder_rows_of_phone(store, arena, message->sender, text_id, &reminders,
                               &context->reminder_count, fault) != 0 ||
        alert_rows_open_of(store, arena, context->role == SENDER_STAFF ? NULL : message->sender,
                           &alerts, &context->alert_count, fault) != 0) {
        goto out;
    }
    context->rentals = gathering.rentals;
    context->accounts = gathering.accounts;
    context->rental_count = gathering.rental_count;
    context->recent = recent->list;
    context->recent_count = recent->count;
    context->rests = gathering.rests;
    add_staff_of(surroundings->loaded->config, alerts, context->alert_count);
    context->alerts = alerts;
    context->reminders = reminders;
    if (context->role == SENDER_STRANGER && gathering.rental_count > 0) {
        context->role = SENDER_RENTER;
    }
    if (!surroundings->is_unlimited &&
        limits_gather(store, surroundings->loaded->config, message, text_id, context, fault) != 0) {
        goto out;
    }
    if (context->role == SENDER_STAFF &&
        add_for_staff(&gathering, surroundings, message, context, fault) != 0) {
        goto out;
    }
    *started_from = started_from_text(arena, &gathering, recent, context);
    rc = 0;
out:
    json_decref(gathering.from_rentals);
    return rc;
}
