#include "check_answers.h"

#include <string.h>

#include "fill.h"
#include "grade.h"
#include "memory.h"
#include "parts.h"

/* Units that fit into 2 parts; kb's limit for each alphabet is in parts.h. */
enum { GSM7_IN_PART = 153, UCS2_IN_PART = 67, GSM7_ALONE = 160 };

struct checking {
    const struct loaded *loaded;
    int64_t now_utc_s;
    struct remarks *remarks;
};

/* One text as it would be sent, and to whom. */
struct sent {
    const char *text;
    const char *whom; /* "for a Brook", or "" */
    struct parts parts;
    double grade; /* 0 for languages but English */
    struct reading_count count;
};

/* ---- One text ------------------------------------------------------------------------------ */

static struct sent
measure(void *arena, const char *text, const char *whom, enum language language)
{
    struct sent sent = {.text = parts_plain(arena, text), .whom = whom};

    sent.parts = parts_count(sent.text);
    if (language == LANGUAGE_EN) {
        sent.count = reading_count(sent.text);
        reading_grade(&sent.count, &sent.grade);
    }
    return sent;
}

/* The first character that GSM-7 does not have, in `arena`; NULL if there is none. */
static const char *
odd_character(void *arena, const char *text)
{
    while (*text != '\0') {
        size_t length = 1;
        char *character;

        while (((unsigned char)text[length] & 0xc0) == 0x80) {
            length++;
        }
        character = memory_copy_n(arena, text, length);
        if (!parts_count(character).gsm7) {
            return character;
        }
        text += length;
    }
    return NULL;
}

static void
check_length(const struct checking *checking, const char *file, int line, const struct sent *sent)
{
    size_t fits = ANSWER_PARTS_MAX * (size_t)(sent->parts.gsm7 ? GSM7_IN_PART : UCS2_IN_PART);

    if (sent->parts.parts > ANSWER_PARTS_MAX) {
        struct remark *remark = remark_add(
            checking->remarks, REMARK_LONG, file, line,
            memory_format(checking->remarks->arena, "take out %zu characters or more",
                          sent->parts.units - fits),
            "%zu characters%s in %zu parts%s", sent->parts.units,
            sent->parts.gsm7 ? "" : " of the dear alphabet", sent->parts.parts, sent->whom);

        remark->gravity = (int)(sent->parts.units - fits);
    }
}

static void
check_alphabet(const struct checking *checking, const char *file, int line, const struct sent *sent)
{
    if (!sent->parts.gsm7) {
        remark_add(checking->remarks, REMARK_UCS2, file, line,
                   "write it in another way: with it a part holds 67 characters, not 153",
                   "\"%s\" is not in the plain alphabet of text messages%s",
                   odd_character(checking->remarks->arena, sent->text), sent->whom);
    }
}

static void
check_grade(const struct checking *checking, const char *file, int line, const struct sent *sent,
            int most)
{
    if (sent->grade > most) {
        struct remark *remark = remark_add(
            checking->remarks, REMARK_GRADE, file, line, "split long sentences, take shorter words",
            "grade %.1f, wanted %d%s: %.1f words a sentence, %.2f syllables a word", sent->grade,
            most, sent->whom, (double)sent->count.words / (double)sent->count.sentences,
            (double)sent->count.syllables / (double)sent->count.words);

        remark->gravity = (int)((sent->grade - most) * 100);
    }
}

/* ---- Topics -------------------------------------------------------------------------------- */

/* A rental with everything that content can ask for, of ordinary length. */
static struct rental
typical_rental(const struct equipment *unit, enum language language, int64_t now_utc_s)
{
    struct rental rental = {.rental_id = "typical",
                            .state = RENTAL_OUT,
                            .name = "Margaret Fieldhouse",
                            .first_name = "Margaret",
                            .language = language,
                            .unit = unit->id,
                            .battery_count = 3,
                            .chargers = 1,
                            .car_charger = true,
                            .due_utc_s = now_utc_s,
                            .place = "Cabin 14, Upper Lodge",
                            .altitude_ft = 8500};
    size_t i;

    rental.backup = (struct backup){.known = true, .kind = "cylinder", .size = "E"};
    for (i = 0; i < rental.battery_count; i++) {
        rental.batteries[i] = (struct battery){"B-1", 100, now_utc_s};
    }
    for (i = 0; i < unit->run_time_count; i++) { /* the last row of a mode stands */
        const struct run_time *row = &unit->run_times[i];
        const struct order order = {
            .known = true, .mode = row->mode, .setting_tenths = row->setting_tenths};

        if (row->mode != MODE_NIGHT) {
            rental.orders[ACTIVITY_WALKING] = order;
        }
        if (row->mode == MODE_CONTINUOUS || !rental.orders[ACTIVITY_REST].known) {
            rental.orders[ACTIVITY_REST] = order;
        }
        rental.orders[ACTIVITY_SLEEP] = order;
    }
    return rental;
}

/* The worst of the texts that a topic makes. */
struct worst {
    struct sent longest, hardest, oddest;
    bool any;
};

static void
keep_worst(struct worst *worst, const struct sent *sent)
{
    if (!worst->any) {
        *worst = (struct worst){*sent, *sent, *sent, true};
        return;
    }
    if (sent->parts.parts > worst->longest.parts.parts ||
        (sent->parts.parts == worst->longest.parts.parts &&
         sent->parts.units > worst->longest.parts.units)) {
        worst->longest = *sent;
    }
    if (sent->grade > worst->hardest.grade) {
        worst->hardest = *sent;
    }
    if (!sent->parts.gsm7) {
        worst->oddest = *sent;
    }
}

static void
try_unit(const struct checking *checking, void *arena, const struct topic *topic,
         const struct equipment *unit, struct worst *worst)
{
    const struct loaded *loaded = checking->loaded;
    struct rental rental;
    struct filling with = {.house = &loaded->config->house,
                           .zone = &loaded->zone,
                           .language = topic->language,
                           .now_utc_s = checking->now_utc_s};
    const char *whom = " for a stranger";
    struct sent sent;

    if (unit != NULL) {
        rental = typical_rental(unit, topic->language, checking->now_utc_s);
        with.rental = &rental;
        with.equipment = unit;
        whom = memory_format(arena, " for a %s", unit->name);
    }
    if (fill_only_if_holds(topic->only_if, topic->only_if_count, &with)) {
        sent = measure(arena, fill(arena, topic->answer, &with, NULL), whom, topic->language);
        keep_worst(worst, &sent);
    }
}

static void
check_topic(const struct checking *checking, const struct topic *topic)
{
    void *arena = memory_must(talloc_new(NULL));
    struct worst worst = {.any = false};
    size_t count, i;
    const struct equipment *const *units = kb_equipment_all(checking->loaded->kb, &count);

    try_unit(checking, arena, topic, NULL, &worst);
    for (i = 0; i < count; i++) {
        try_unit(checking, arena, topic, units[i], &worst);
    }
    if (worst.any) {
        check_length(checking, topic->file, topic->answer_line, &worst.longest);
        check_alphabet(checking, topic->file, topic->answer_line, &worst.oddest);
        check_grade(checking, topic->file, topic->answer_line, &worst.hardest, TOPIC_GRADE_MAX);
    }
    talloc_free(arena);
}

/* ---- Signs --------------------------------------------------------------------------------- */

static void
check_emergency(const struct checking *checking, const struct sign *sign, const struct sent *sent)
{
    if (!sent->parts.gsm7) {
        remark_add(checking->remarks, REMARK_EMERGENCY, sign->file, sign->reply_line,
                   "write it in another way", "\"%s\" is not in the plain alphabet",
                   odd_character(checking->remarks->arena, sent->text));
    }
    if (sent->parts.units > GSM7_ALONE) {
        remark_add(checking->remarks, REMARK_EMERGENCY, sign->file, sign->reply_line,
                   memory_format(checking->remarks->arena, "take out %zu characters or more",
                                 sent->parts.units - GSM7_ALONE),
                   "%zu characters; the first part has to stand alone in %d", sent->parts.units,
                   GSM7_ALONE);
    }
}

static void
check_sign(const struct checking *checking, const struct sign *sign)
{
    void *arena = memory_must(talloc_new(NULL));
    const struct filling with = {.house = &checking->loaded->config->house,
                                 .language = sign->language};
    struct sent sent = measure(arena, fill(arena, sign->reply, &with, NULL), "", sign->language);
    bool is_emergency = sign->level == SIGN_EMERGENCY;

    if (is_emergency) {
        check_emergency(checking, sign, &sent);
    } else {
        check_length(checking, sign->file, sign->reply_line, &sent);
        check_alphabet(checking, sign->file, sign->reply_line, &sent);
    }
    check_grade(checking, sign->file, sign->reply_line, &sent,
                is_emergency ? EMERGENCY_GRADE_MAX : TOPIC_GRADE_MAX);
    talloc_free(arena);
}

/* ---- All ----------------------------------------------------------------------------------- */

static void
check_approved(const struct checking *checking, bool approved, const char *file, int line,
               const char *title)
{
    if (!approved) {
        remark_add(checking->remarks, REMARK_UNAPPROVED, file, line,
                   "have a clinician read it; then put name, role and day under \"Approved\"",
                   "\"%s\"", title);
    }
}

void
check_answers(const struct loaded *loaded, int64_t now_utc_s, struct remarks *remarks)
{
    const struct checking checking = {loaded, now_utc_s, remarks};
    size_t topic_count, sign_count, i;
    const struct topic *topics = kb_topics(loaded->kb, &topic_count);
    const struct sign *signs = kb_signs(loaded->kb, &sign_count);

    for (i = 0; i < sign_count; i++) {
        check_sign(&checking, &signs[i]);
        check_approved(&checking, signs[i].approved, signs[i].file, signs[i].reply_line,
                       signs[i].title);
    }
    for (i = 0; i < topic_count; i++) {
        check_topic(&checking, &topics[i]);
        check_approved(&checking, topics[i].approved, topics[i].file, topics[i].answer_line,
                       topics[i].title);
    }
}
